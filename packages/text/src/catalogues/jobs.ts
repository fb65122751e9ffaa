import { catalogue } from '../catalogue.ts';
import { jobHolds } from './jobs/holds.ts';
import { jobReferral } from './jobs/referral.ts';

export const jobs = { ...jobHolds, ...jobReferral, ...catalogue({}) };
