import { catalogue } from '../catalogue.ts';

export const identity = catalogue({});
