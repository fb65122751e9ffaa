import { catalogue } from '../catalogue.ts';

export const proof = catalogue({});
