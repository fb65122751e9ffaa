import type { checklists, Endpoint, found, FoundReport, Me, Permits, Photo, photos, PrivateLines, ResponseOf, StoredSurveyFact, surveyFacts } from '@yardfall/contracts';
import { answerKey, ownerKey } from './answerKeys.ts';
import { call, type Answer, type CallInput } from './api.ts';
import { inStores } from './idb.ts';
import { ApiProblem } from './problem.ts';

/** What a field user reads without a signal: the jobs, what was surveyed, what is built and what there is to do. No prices, no customers' pages. By name: every first page carries this file, and the endpoints themselves bring their schemas. */
export const keptHere: ReadonlySet<string> = new Set([
  'identity.me', 'jobs.list', 'jobs.read', 'surveys.list', 'surveys.read', 'surveyFacts.list', 'checklists.read', 'designs.list', 'designs.read', 'photos.list', 'found.list', 'daywork.list', 'proof.list', 'locates.list', 'privateLines.read', 'permits.read', 'gasRules.list',
]);

let owner: string | null = null;
let outOfReach = false;
/** Answers are kept one after the other behind the page, which does not wait for its store: whose they are must be known before them. A page that cannot keep (private mode, full disk) still shows. */
let keeping: Promise<unknown> = Promise.resolve();
const listeners = new Set<() => void>();

/** Whether the last question found no office, and was answered from this device. */
export function isOutOfReach(): boolean {
  return outOfReach;
}

export function onReach(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** Asks the office; while it cannot be reached, its last answer to the same question stands in, when this device keeps that. */
export async function ask<E extends Endpoint>(endpoint: E, input: CallInput<E>): Promise<Answer<ResponseOf<E>>> {
  const send = call as (endpoint: E, input: CallInput<E>) => Promise<Answer<ResponseOf<E>>>;
  if (!keptHere.has(endpoint.id)) return send(endpoint, input);
  const key = answerKey(endpoint.id, input);
  try {
    const answer = await send(endpoint, input);
    setReach(false);
    keeping = keeping.then(() => remember(endpoint, key, answer)).catch(() => undefined);
    return answer;
  } catch (error) {
    if (error instanceof ApiProblem && error.code === 'auth.phoneCutOff') await forgetPhone();
    if (!(error instanceof ApiProblem) || !error.passing) throw error;
    const kept = await inStores(['answers'], 'readonly', ({ answers }) => answers.get(key)).catch(() => undefined);
    if (kept === undefined) throw error;
    setReach(true);
    return kept as Answer<ResponseOf<E>>;
  }
}

/** Nothing of one person stays for the next: at signing out, and when somebody else signs in. What waits to be sent is not touched. */
export async function forgetAnswers(): Promise<void> {
  owner = null;
  await inStores(['answers'], 'readwrite', ({ answers }) => answers.clear());
}

/** A phone that was cut off keeps nothing of the company either; whoever signs in on it again records as another phone, whose facts count. */
async function forgetPhone(): Promise<void> {
  await forgetAnswers();
  await inStores(['devices'], 'readwrite', ({ devices }) => devices.clear());
}

export type FactsOfJob = ResponseOf<typeof surveyFacts.list>;

/** Facts that have just arrived, put into what is known of the job, so that a phone never shows less than it sent. */
export function withDelivered(known: FactsOfJob, delivered: readonly StoredSurveyFact[]): FactsOfJob {
  const same = (a: StoredSurveyFact) => delivered.some((b) => b.fact.id === a.fact.id && b.reason === a.reason);
  return { ...known, facts: [...known.facts.filter((one) => !same(one)), ...delivered] };
}

export async function rememberDelivered(jobId: string, delivered: readonly StoredSurveyFact[]): Promise<void> {
  const key = answerKey('surveyFacts.list', { params: { jobId } });
  await inStores(['answers'], 'readwrite', async ({ answers }) => {
    const kept = (await answers.get(key)) as Answer<FactsOfJob> | undefined;
    if (kept !== undefined) await answers.put({ ...kept, data: withDelivered(kept.data, delivered) }, key);
  });
}

/** The whole answer as the office gave it to what this phone sent: without a signal a moment later, nothing of it is missing. */
async function rememberWhole(id: string, jobId: string, data: unknown): Promise<void> {
  const key = answerKey(id, { params: { jobId } });
  await inStores(['answers'], 'readwrite', async ({ answers }) => {
    const kept = (await answers.get(key)) as Answer<unknown> | undefined;
    if (kept !== undefined) await answers.put({ ...kept, data }, key);
  });
}

export const rememberChecklist = (jobId: string, checklist: ResponseOf<typeof checklists.read>): Promise<void> => rememberWhole('checklists.read', jobId, checklist);
export const rememberPermits = (jobId: string, permits: Permits): Promise<void> => rememberWhole('permits.read', jobId, permits);
export const rememberPrivateLines = (jobId: string, lines: PrivateLines): Promise<void> => rememberWhole('privateLines.read', jobId, lines);

export type FoundOfJob = ResponseOf<typeof found.list>;

export function withReport({ items }: FoundOfJob, report: FoundReport): FoundOfJob {
  const others = items.filter(({ id }) => id !== report.id);
  return { items: others.length < items.length ? items.map((one) => (one.id === report.id ? report : one)) : [report, ...others] };
}

/** A report that has just arrived: what is stopped stays stopped where the next question finds no office. */
export async function rememberFound(report: FoundReport): Promise<void> {
  const key = answerKey('found.list', { params: { jobId: report.jobId } });
  await inStores(['answers'], 'readwrite', async ({ answers }) => {
    const kept = (await answers.get(key)) as Answer<FoundOfJob> | undefined;
    if (kept !== undefined) await answers.put({ ...kept, data: withReport(kept.data, report) }, key);
  });
}

export type PhotosOfJob = ResponseOf<typeof photos.list>;

export function withPhoto({ items }: PhotosOfJob, photo: Photo): PhotosOfJob {
  return { items: items.map((one) => (one.id === photo.id ? photo : one)) };
}

/** A photo with what has just been added to it: without a signal a moment later, none of it is missing. */
export async function rememberPhoto(photo: Photo): Promise<void> {
  const key = answerKey('photos.list', { params: { jobId: photo.jobId } });
  await inStores(['answers'], 'readwrite', async ({ answers }) => {
    const kept = (await answers.get(key)) as Answer<PhotosOfJob> | undefined;
    if (kept !== undefined) await answers.put({ ...kept, data: withPhoto(kept.data, photo) }, key);
  });
}

async function remember(endpoint: Endpoint, key: string, answer: Answer<unknown>): Promise<void> {
  if (endpoint.id === 'identity.me') await ownedBy(answer.data as Me);
  if (owner === null) return;
  await inStores(['answers'], 'readwrite', ({ answers }) => answers.put(answer, key));
}

/** Whose answers are kept from now on: told by signing in, and by every answer to who is there. */
export async function ownedBy({ kind, id }: Me): Promise<void> {
  const before = await inStores(['answers'], 'readonly', ({ answers }) => answers.get(ownerKey));
  if (before !== undefined && before !== id) await forgetAnswers();
  owner = kind === 'member' ? id : null;
  if (owner !== null && before !== id) await inStores(['answers'], 'readwrite', ({ answers }) => answers.put(id, ownerKey));
}

function setReach(next: boolean): void {
  if (outOfReach === next) return;
  outOfReach = next;
  for (const listener of listeners) listener();
}
