import { catalogue } from '../catalogue.ts';

export const handover = catalogue({});
