import { catalogue } from '../catalogue.ts';

export const rain = catalogue({});
