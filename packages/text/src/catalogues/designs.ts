import { catalogue } from '../catalogue.ts';

export const designs = catalogue({});
