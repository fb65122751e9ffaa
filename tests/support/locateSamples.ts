import { randomUUID } from 'node:crypto';
import type { LocateTicket } from '@yardfall/contracts';
import { post } from './builders.ts';
import type { Sample } from './samples.ts';
import type { World } from './world.ts';

const ticket = async ({ ours, jobId }: World): Promise<LocateTicket> => post(ours.crew.agent, `/jobs/${jobId}/locate-tickets`, {
  number: randomUUID(), requestedAt: '2026-02-23T15:00:00Z', area: 'Back yard', utilities: ['Gas'],
}, 201);
const granted = { state: 'granted', number: 'B-7', note: '', on: '2026-03-02', expiresOn: null, photoId: null };

/** Permits, locate tickets and what belongs to them. */
export const locateSamples: Readonly<Record<string, Sample>> = {
  'permits.read': ({ jobId }) => ({ params: { jobId } }),
  'permits.answer': ({ jobId }) => ({ params: { jobId }, body: { answers: [{ kind: 'tree', ...granted }] } }),
  'permits.answerOutlet': ({ jobId, released }) => ({ params: { jobId }, body: { revisionId: released.revision.id, outlet: 'O1', question: 'O3', ...granted } }),
  'locates.list': ({ jobId }) => ({ params: { jobId } }),
  'locates.create': ({ jobId }) => ({ params: { jobId }, body: { number: randomUUID(), requestedAt: '2026-02-23T15:00:00Z', area: 'Back yard', utilities: ['Gas'] } }),
  'locates.answer': async (world) => ({ params: { jobId: world.jobId, ticketId: (await ticket(world)).id }, body: { utility: 'Gas', answer: 'marked', note: '' } }),
  'locates.close': async (world) => ({ params: { jobId: world.jobId, ticketId: (await ticket(world)).id }, body: {} }),
};
