import { catalogue } from '../catalogue.ts';

export const jobs = catalogue({});
