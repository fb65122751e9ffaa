import { checklists, daywork, found, identity, locates, photos, proof, surveyFacts, uploads, type Checklist, type FoundReport, type LocateTicket, type Photo, type StoredSurveyFact } from '@yardfall/contracts';
import { rememberChecklist, rememberDelivered, rememberFound, rememberPhoto } from './answers.ts';
import { call } from './api.ts';
import { rememberTicket } from './keptTickets.ts';
import { deviceOf, loadOutbox, markRefused, markRegistered, outboxNow, removeEntries, type OutboxEntry, type OutboxFact, type OutboxLocate, type OutboxPhoto, type OutboxSurveyFact } from './outbox.ts';
import { ApiProblem } from './problem.ts';
import { sendWhole } from './resume.ts';
import { sendAnswer, type AnswersHeard } from './sendAnswer.ts';
import { tellShare } from './sent.ts';
import { isFreeLink, isVideo, videoOf } from './videos.ts';

export interface Sender extends AnswersHeard {
  readonly id: string;
  readonly name: string;
  /** Told before the facts leave the outbox, so that no page shows less in between. */
  readonly onDelivered?: (jobId: string, facts: readonly StoredSurveyFact[]) => void;
  readonly onTicket?: (jobId: string, ticket: LocateTicket) => void;
  readonly onChecklist?: (jobId: string, checklist: Checklist) => void;
  readonly onFound?: (report: FoundReport) => void;
  readonly onPhoto?: (photo: Photo) => void;
}

const factsAtOnce = 100;

/**
 * Sends what waits, oldest first, so that a photo is there before the fact that names it. What the office refuses for good
 * stays on the phone with the reason; what may go through later stops the round. Answers whether anything was sent.
 */
export async function sendOutbox(sender: Sender): Promise<boolean> {
  if (!('locks' in navigator)) return sendAll(sender);
  // Two tabs of one phone must not send the same entries side by side.
  return navigator.locks.request('yardfall.outbox', { ifAvailable: true }, (lock) => (lock === null ? false : sendAll(sender)));
}

async function sendAll(sender: Sender): Promise<boolean> {
  await loadOutbox();
  let sent = false;
  for (let batch = nextBatch(outboxNow(), sender.id); batch.length > 0; batch = nextBatch(outboxNow(), sender.id)) {
    const problem = await problemWith(batch, sender);
    if (problem === 'putOff') continue;
    if (problem === null) await removeEntries(batch);
    else if (mayPass(problem)) return sent;
    else sent = (await refuse(batch, problem, sender)) || sent;
    sent ||= problem === null;
  }
  return sent;
}

const alone: ReadonlySet<OutboxEntry['kind']> = new Set(['photo', 'photoMore', 'found', 'foundMore', 'proof', 'locate', 'answer']);

/** A video, and what names it, goes after all else, and only over a link that costs nothing or when somebody said so. */
export function nextBatch(all: readonly OutboxEntry[], memberId: string, isFree = isFreeLink()): readonly OutboxEntry[] {
  const own = all.filter((entry) => entry.memberId === memberId && entry.refused === null);
  const videos = own.filter(isVideo);
  const ids = new Set(videos.map(({ id }) => id));
  const batch = smallBatch(own.filter((entry) => videoOf(entry, ids) === null));
  return batch.length > 0 ? batch : videos.filter(({ now }) => isFree || now === true).slice(0, 1);
}

/** One photo or report, or as many facts of one kind and job as follow each other. A stop goes before all else; levels are small and wait for no photo. */
function smallBatch(waiting: readonly OutboxEntry[]): readonly OutboxEntry[] {
  const act = urgentAct(waiting);
  if (act !== undefined) return [act];
  const levels = waiting.filter((entry) => entry.kind === 'surveyFact');
  const stops = waiting.filter(isStop);
  const queue = stops.length > 0 ? stops : levels.length > 0 ? levels : waiting;
  const [first] = queue;
  if (first === undefined) return [];
  if (alone.has(first.kind)) return [first];
  const end = queue.findIndex((entry) => entry.kind !== first.kind || entry.jobId !== first.jobId);
  return queue.slice(0, Math.min(end < 0 ? queue.length : end, factsAtOnce));
}

/** What stops work, and that a line was hit; it names no photo that would have to be there before it. */
function isStop(entry: OutboxEntry): boolean {
  if (entry.kind === 'found') return entry.report.photoIds.length === 0;
  return entry.kind === 'foundMore' && entry.more.photoIds.length === 0 && (entry.more.hit ?? null) !== null;
}

/** A line that was hit waits for nothing but what happened to the same ticket before it and the photo that shows it. */
function urgentAct(waiting: readonly OutboxEntry[]): OutboxLocate | undefined {
  const photos = new Set(waiting.filter(({ kind }) => kind === 'photo').map(({ id }) => id));
  const acts = waiting.filter((entry): entry is OutboxLocate => entry.kind === 'locate');
  const first = acts.filter((act, at) => acts.findIndex(({ ticketId }) => ticketId === act.ticketId) === at);
  return first.find(({ act }) => !photos.has(act.body.photoId ?? ''));
}

async function problemWith(batch: readonly OutboxEntry[], sender: Sender): Promise<ApiProblem | 'putOff' | null> {
  try {
    return (await send(batch, sender)) ? null : 'putOff';
  } catch (error) {
    if (error instanceof ApiProblem) return error;
    throw error;
  }
}

/** False when it was put off for something that goes before it. */
async function send(batch: readonly OutboxEntry[], sender: Sender): Promise<boolean> {
  const [first] = batch;
  if (first === undefined) return true;
  const params = { jobId: first.jobId };
  if (first.kind === 'photo') return sendPhoto(first, sender);
  if (first.kind === 'photoMore') {
    const { data } = await call(photos.amend, { params: { ...params, photoId: first.photoId }, body: first.more, idempotencyKey: first.id });
    await rememberPhoto(data);
    sender.onPhoto?.(data);
  } else if (first.kind === 'found') {
    await arrived(sender, (await call(found.report, { params, body: first.report, idempotencyKey: first.id })).data);
  } else if (first.kind === 'foundMore') {
    await arrived(sender, (await call(found.amend, { params: { ...params, reportId: first.reportId }, body: first.more, idempotencyKey: first.id })).data);
  } else if (first.kind === 'proof') {
    await call(proof.record, { params, body: first.test, idempotencyKey: first.id });
  } else if (first.kind === 'locate') {
    const ticket = await sendAct(first);
    await rememberTicket(first.jobId, ticket);
    sender.onTicket?.(first.jobId, ticket);
  } else if (first.kind === 'answer') {
    await sendAnswer(first, sender);
  } else if (first.kind === 'daywork') {
    await call(daywork.record, { params, body: { entries: batch.flatMap((one) => (one.kind === 'daywork' ? [one.entry] : [])) } });
  } else if (first.kind === 'surveyFact') {
    await register(sender);
    const facts = batch.filter((entry): entry is OutboxSurveyFact => entry.kind === 'surveyFact').map(({ fact }) => fact);
    const { data } = await call(surveyFacts.record, { params, body: { facts } });
    await rememberDelivered(first.jobId, data.facts);
    sender.onDelivered?.(first.jobId, data.facts);
  } else {
    await register(sender);
    const facts = batch.filter((entry): entry is OutboxFact => entry.kind === 'fact').map(({ fact }) => fact);
    // The office learns how far this clock is from its own.
    const { data } = await call(checklists.record, { params, body: { facts, sentAt: new Date().toISOString() } });
    await rememberChecklist(first.jobId, data.checklist);
    sender.onChecklist?.(first.jobId, data.checklist);
  }
  return true;
}

/** What is recorded while a video is on its way goes before the rest of it. */
function sendPhoto(photo: OutboxPhoto, sender: Sender): Promise<boolean> {
  const { file, id, jobId, meta } = photo;
  const goOn = isVideo(photo) ? () => nextBatch(outboxNow(), sender.id)[0]?.id === id : undefined;
  return sendWhole({ begin: uploads.create, params: { jobId } }, file, meta, (bytes) => tellShare(id, bytes / file.size), goOn);
}

/** Told before it leaves the outbox: at no moment does the phone show less than it stopped. */
async function arrived(sender: Sender, report: FoundReport): Promise<void> {
  await rememberFound(report);
  sender.onFound?.(report);
}

/** What happened is not kept back by a photo that the office did not take. */
async function sendAct({ id, jobId, ticketId, act }: OutboxLocate): Promise<LocateTicket> {
  const params = { jobId, ticketId };
  const isRefused = outboxNow().some((entry) => entry.kind === 'photo' && entry.id === act.body.photoId && entry.refused !== null);
  const photoId = isRefused ? null : (act.body.photoId ?? null);
  const { data } = act.what === 'event'
    ? await call(locates.event, { params, body: { ...act.body, photoId }, idempotencyKey: id })
    : await call(locates.answer, { params, body: { ...act.body, photoId }, idempotencyKey: id });
  return data;
}

async function register(sender: Sender): Promise<void> {
  const device = await deviceOf(sender.id);
  if (!device || device.registered) return;
  await call(identity.registerDevice, { body: { id: device.id, name: sender.name } });
  await markRegistered(sender.id);
}

/** Out of reach, busy, signed out, or answered by something between here and the office: the same entry can go through later. */
export function mayPass(problem: ApiProblem): boolean {
  return problem.passing || problem.status === 401 || problem.status === 429 || problem.status >= 500 || problem.code === 'unreadableAnswer';
}

/** Of several facts only the bad ones are set aside; a photo takes along what names it. */
async function refuse(batch: readonly OutboxEntry[], problem: ApiProblem, sender: Sender): Promise<boolean> {
  const [first] = batch;
  if (first === undefined) return false;
  if (batch.length === 1) {
    const shown = outboxNow().filter((entry) => (entry.kind === 'photoMore' ? entry.photoId : entry.kind === 'fact' && entry.fact.kind === 'photo' ? entry.fact.photoId : null) === first.id);
    await markRefused([first, ...shown], problem.code);
    return false;
  }
  let sent = false;
  for (const entry of batch) {
    const own = await problemWith([entry], sender);
    if (own === null || own === 'putOff') await removeEntries([entry]);
    else if (mayPass(own)) return sent;
    else await markRefused([entry], own.code);
    sent ||= own === null;
  }
  return sent;
}
