import { catalogue } from '../catalogue.ts';

export const locates = catalogue({});
