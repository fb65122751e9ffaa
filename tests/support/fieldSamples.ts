import { randomUUID } from 'node:crypto';
import type { FoundReport } from '@yardfall/contracts';
import { post } from './builders.ts';
import type { Sample } from './samples.ts';
import type { World } from './world.ts';

const ofJob: Sample = ({ jobId }) => ({ params: { jobId } });
const report = (world: World, jobId = world.jobId): Promise<FoundReport> => post(world.office, `/jobs/${jobId}/found`, { kind: 'soil', part: null, measure: null, note: 'soft', photoIds: [] }, 201);

/** Calls of what the crew notes besides the checklist. */
export const fieldSamples: Readonly<Record<string, Sample>> = {
  'daywork.list': ofJob,
  'daywork.record': ({ jobId }) => ({ params: { jobId }, body: { entries: [{ kind: 'stopped', id: randomUUID(), at: '2026-11-24T15:00:00Z' }] } }),
  'found.list': ofJob,
  'found.report': ({ jobId }) => ({ params: { jobId }, body: { kind: 'soil', part: null, measure: null, note: 'soft', photoIds: [] } }),
  'found.draft': (world) => world.jobApart().then(async (jobId) => ({ params: { jobId, reportId: (await report(world, jobId)).id }, body: {} })),
  'found.answer': async (world) => ({ params: { jobId: world.jobId, reportId: (await report(world)).id }, body: { answer: 'stone under it' } }),
};
