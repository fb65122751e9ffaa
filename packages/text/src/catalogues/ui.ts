import { catalogue } from '../catalogue.ts';

export const ui = catalogue({});
