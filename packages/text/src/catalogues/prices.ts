import { catalogue } from '../catalogue.ts';

export const prices = catalogue({});
