import { catalogue } from '../catalogue.ts';

export const errors = catalogue({});
