import { catalogue } from '../catalogue.ts';
import { offerText } from './offers/text.ts';

export const offers = { ...offerText, ...catalogue({}) };
