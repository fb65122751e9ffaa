import { catalogue } from '../catalogue.ts';

export const workings = catalogue({});
