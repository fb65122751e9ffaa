import { catalogue } from '../catalogue.ts';

export const problems = catalogue({});
