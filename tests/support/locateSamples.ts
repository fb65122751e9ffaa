import { randomUUID } from 'node:crypto';
import type { LocateTicket } from '@yardfall/contracts';
import { post } from './builders.ts';
import type { Sample } from './samples.ts';
import type { World } from './world.ts';

const ticket = async ({ ours, jobId }: World): Promise<LocateTicket> => post(ours.crew.agent, `/jobs/${jobId}/locate-tickets`, {
  number: randomUUID(), requestedAt: '2026-02-23T15:00:00Z', area: 'Back yard', utilities: ['Gas'],
}, 201);
const prepared = ({ ours, jobId }: World): Promise<LocateTicket> => post(ours.crew.agent, `/jobs/${jobId}/locate-tickets/drafts`, { area: 'Back yard', utilities: ['Gas'] }, 201);
const granted = { state: 'granted', number: 'B-7', note: '', on: '2026-03-02', expiresOn: null, photoId: null };

/** In the shape of a law; nobody confirmed it. */
export const georgia = {
  state: 'GA', notice: { kind: 'fullWorkingDays', days: 2 }, life: { kind: 'calendarDays', days: 21, from: 'legalStart' }, renewal: { kind: 'workingDaysBeforeExpiry', days: 3 }, received: null,
  tolerance: 0.6096, toleranceFrom: 'edge', noAnswer: 'callAgain', holidays: ['newYear', 'memorial', 'independence', 'labor', 'thanksgiving', 'christmas'], source: 'Handbook of the center, page 12', readOn: '2026-03-01',
};

/** Permits, locate tickets and what belongs to them. */
export const locateSamples: Readonly<Record<string, Sample>> = {
  'permits.read': ({ jobId }) => ({ params: { jobId } }),
  'permits.answer': ({ jobId }) => ({ params: { jobId }, body: { answers: [{ kind: 'tree', ...granted }] } }),
  'permits.answerOutlet': ({ jobId, released }) => ({ params: { jobId }, body: { revisionId: released.revision.id, outlet: 'O1', question: 'O3', ...granted } }),
  'privateLines.read': ({ jobId }) => ({ params: { jobId } }),
  'privateLines.declare': ({ jobId }) => ({ params: { jobId }, body: { lines: [{ question: 'septic', state: 'yes', note: 'by the shed', on: null, photoId: null }] } }),
  'locates.list': ({ jobId }) => ({ params: { jobId } }),
  'locates.create': ({ jobId }) => ({ params: { jobId }, body: { number: randomUUID(), requestedAt: '2026-02-23T15:00:00Z', area: 'Back yard', utilities: ['Gas'] } }),
  'locates.prepare': ({ jobId }) => ({ params: { jobId }, body: { area: 'Back yard', utilities: ['Gas'] } }),
  'locates.submit': async (world) => ({ params: { jobId: world.jobId, ticketId: (await prepared(world)).id }, body: { number: randomUUID(), requestedAt: '2026-02-23T15:00:00Z' } }),
  'locates.event': async (world) => ({
    params: { jobId: world.jobId, ticketId: (await ticket(world)).id }, body: { kind: 'marksDestroyed', utility: '', hazard: false, note: 'rain', photoId: null, at: '2026-03-01T15:00:00Z' },
  }),
  'locates.give': async (world) => ({ params: { jobId: world.jobId, ticketId: (await ticket(world)).id }, body: { startAt: null, expiresAt: '2026-03-05T15:00:00Z', note: '' } }),
  'locateRuleSets.list': () => ({}),
  'locateRuleSets.sign': () => ({ body: { rule: georgia, signedName: 'Test owner' } }),
  'gasRules.list': () => ({}),
  'gasRules.enter': () => ({ body: { gasCompany: 'Alder Gas', rule: 'Leave a running engine as it is.', source: 'Their safety sheet, page 2', readOn: '2026-03-01' } }),
  'locates.answer': async (world) => ({ params: { jobId: world.jobId, ticketId: (await ticket(world)).id }, body: { utility: 'Gas', answer: 'marked', note: '' } }),
  'locates.close': async (world) => ({ params: { jobId: world.jobId, ticketId: (await ticket(world)).id }, body: {} }),
};
