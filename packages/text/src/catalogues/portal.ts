import { catalogue } from '../catalogue.ts';

export const portal = catalogue({});
