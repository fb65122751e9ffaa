import { catalogue } from '../catalogue.ts';

export const findings = catalogue({});
