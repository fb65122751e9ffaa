import { catalogue } from '../catalogue.ts';

export const surveys = catalogue({});
