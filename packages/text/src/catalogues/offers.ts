import { catalogue } from '../catalogue.ts';

export const offers = catalogue({});
