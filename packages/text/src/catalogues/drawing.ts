import { catalogue } from '../catalogue.ts';

export const drawing = catalogue({});
