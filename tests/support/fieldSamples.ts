import { randomUUID } from 'node:crypto';
import type { FoundReport } from '@yardfall/contracts';
import { post } from './builders.ts';
import type { Sample } from './samples.ts';
import type { World } from './world.ts';

const ofJob: Sample = ({ jobId }) => ({ params: { jobId } });
const report = (world: World, jobId = world.jobId, agent = world.office): Promise<FoundReport> => post(agent, `/jobs/${jobId}/found`, { kind: 'soil', part: null, measure: null, note: 'soft', photoIds: [] }, 201);

/** Calls of what the crew notes besides the checklist. */
export const fieldSamples: Readonly<Record<string, Sample>> = {
  'daywork.list': ofJob,
  'daywork.record': ({ jobId }) => ({ params: { jobId }, body: { entries: [{ kind: 'stopped', id: randomUUID(), at: '2026-11-24T15:00:00Z' }] } }),
  'found.list': ofJob,
  'found.report': ({ jobId }) => ({ params: { jobId }, body: { kind: 'soil', part: null, measure: null, note: 'soft', photoIds: [] } }),
  // Only who reported it adds to it, whoever that is.
  'found.amend': async (world, role) => ({ params: { jobId: world.jobId, reportId: (await report(world, world.jobId, world.ours[role].agent)).id }, body: { id: randomUUID(), at: '2026-11-24T15:00:00Z', kind: null, part: null, measure: 0.2, note: '', photoIds: [], hit: null } }),
  'found.draft': (world) => world.jobApart().then(async (jobId) => ({ params: { jobId, reportId: (await report(world, jobId)).id }, body: {} })),
  'found.answer': async (world) => ({ params: { jobId: world.jobId, reportId: (await report(world)).id }, body: { answer: 'stone under it' } }),
};
