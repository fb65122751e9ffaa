import { catalogue } from '../catalogue.ts';

export const checklists = catalogue({});
