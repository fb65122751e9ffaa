import { catalogue } from '../catalogue.ts';
import { portalCare } from './portal/care.ts';
import { portalWhy } from './portal/why.ts';

export const portal = { ...portalWhy, ...portalCare, ...catalogue({}) };
