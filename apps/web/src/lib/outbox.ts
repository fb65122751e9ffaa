import type { BodyInput, DayworkEntry, FieldFact, found, locates, NewPhotoAddition, permits, PhotoMeta, privateLines, proof, SurveyDraft, SurveyFact } from '@yardfall/contracts';
import { v7 as uuidv7 } from 'uuid';
import { inStores } from './idb.ts';

interface Base {
  /** Order of recording on this phone; given by the store. */
  readonly at: number;
  readonly id: string;
  /** Whose entry it is: another person who signs in on this phone does not send it. */
  readonly memberId: string;
  readonly jobId: string;
  /** Error code with which the office refused it for good; null while it waits. */
  readonly refused: string | null;
}
/** `now`: a video that goes over any network, because somebody said so. */
export type OutboxPhoto = Base & { readonly kind: 'photo'; readonly meta: PhotoMeta; readonly file: Blob; readonly now?: true };
/** What is laid over a photo that is kept, or where it belongs. */
export type OutboxPhotoMore = Base & { readonly kind: 'photoMore'; readonly photoId: string; readonly more: NewPhotoAddition };
export type OutboxFact = Base & { readonly kind: 'fact'; readonly fact: FieldFact };
export type OutboxFound = Base & { readonly kind: 'found'; readonly report: BodyInput<typeof found.report> };
export type OutboxFoundMore = Base & { readonly kind: 'foundMore'; readonly reportId: string; readonly more: BodyInput<typeof found.amend> };
export type OutboxSurveyFact = Base & { readonly kind: 'surveyFact'; readonly fact: SurveyFact };
export type OutboxProof = Base & { readonly kind: 'proof'; readonly test: BodyInput<typeof proof.record> };
/** What happened to a locate ticket, or what a utility answered. */
export type TicketAct = { readonly what: 'event'; readonly body: BodyInput<typeof locates.event> } | { readonly what: 'answer'; readonly body: BodyInput<typeof locates.answer> };
export type OutboxLocate = Base & { readonly kind: 'locate'; readonly ticketId: string; readonly act: TicketAct };
type Unsaid<A> = Omit<A, 'kept'>;
/** Where an approval or an outlet question stands, or what the homeowner said of a line of their own. */
export type JobAnswer =
  | { readonly what: 'permit'; readonly said: Unsaid<BodyInput<typeof permits.answer>['answers'][number]> }
  | { readonly what: 'outlet'; readonly said: Unsaid<BodyInput<typeof permits.answerOutlet>> }
  | { readonly what: 'privateLine'; readonly said: Unsaid<BodyInput<typeof privateLines.declare>['lines'][number]> };
export type OutboxAnswer = Base & { readonly kind: 'answer'; readonly answer: JobAnswer };
export type OutboxDaywork = Base & { readonly kind: 'daywork'; readonly entry: DayworkEntry };
type Unseen<D> = D extends SurveyDraft ? Omit<D, 'seen'> : never;
/** What one press writes down, before the phone gives it its number and notes what it follows. */
export type FactDraft = Unseen<SurveyDraft>;
export type OutboxEntry = OutboxPhoto | OutboxPhotoMore | OutboxFact | OutboxSurveyFact | OutboxFound | OutboxFoundMore | OutboxDaywork | OutboxProof | OutboxLocate | OutboxAnswer;

export interface Device {
  readonly id: string;
  readonly seq: number;
  readonly registered: boolean;
}

type Unsent<E extends OutboxEntry> = Omit<E, 'at' | 'refused' | 'kind'>;
/** What is known of a fact before this phone gives it its number. */
type Unnumbered<F> = F extends FieldFact ? Omit<F, 'id' | 'deviceId' | 'seq' | 'deviceTime' | 'factVersion'> : never;
export type NewFact = Unnumbered<FieldFact>;

let entries: readonly OutboxEntry[] = [];
let isRead = false;
const listeners = new Set<() => void>();
const otherTabs = typeof BroadcastChannel === 'undefined' ? null : new BroadcastChannel('yardfall.outbox');
otherTabs?.addEventListener('message', () => void readAgain(false).catch(() => undefined));

/** What is on this phone and not yet in the office, oldest first. */
export function outboxNow(): readonly OutboxEntry[] {
  return entries;
}

/** Before the store was read nobody may say that nothing waits. */
export function outboxIsRead(): boolean {
  return isRead;
}

export function onOutbox(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export async function loadOutbox(): Promise<void> {
  try {
    await readAgain(false);
  } catch (error) {
    changed(); // a browser that keeps nothing has nothing to wait for
    throw error;
  }
}

/** A photo, the facts that name it and where it belongs are kept in one step: a phone that dies in between would hold a picture that proves nothing. */
export async function keepPhoto(entry: Unsent<OutboxPhoto>, shows: readonly NewFact[] = [], more: Unsent<OutboxPhotoMore> | null = null): Promise<void> {
  await keepNumbered(entry.memberId, (next, put) => {
    put({ ...entry, kind: 'photo', refused: null });
    if (more !== null) put({ ...more, kind: 'photoMore', refused: null });
    for (const fact of shows) put(factEntry(entry.memberId, entry.jobId, { ...fact, ...next() }));
  });
}

export async function keepPhotoMore(entry: Unsent<OutboxPhotoMore>): Promise<void> {
  await inStores(['outbox'], 'readwrite', ({ outbox }) => outbox.put({ ...entry, kind: 'photoMore', refused: null }));
  await readAgain(true);
}

export async function keepFound(entry: Unsent<OutboxFound>): Promise<void> {
  await inStores(['outbox'], 'readwrite', ({ outbox }) => outbox.put({ ...entry, kind: 'found', refused: null }));
  await readAgain(true);
}

/** What is added to a report: a photo of it is kept in the same step, so that none is on the phone without saying of what. */
export async function keepFoundMore(entry: Unsent<OutboxFoundMore>, photo: Unsent<OutboxPhoto> | null = null): Promise<void> {
  await inStores(['outbox'], 'readwrite', async ({ outbox }) => {
    if (photo !== null) await outbox.put({ ...photo, kind: 'photo', refused: null });
    await outbox.put({ ...entry, kind: 'foundMore', refused: null });
  });
  await readAgain(true);
}

export async function keepProof(entry: Unsent<OutboxProof>): Promise<void> {
  await inStores(['outbox'], 'readwrite', ({ outbox }) => outbox.put({ ...entry, kind: 'proof', refused: null }));
  await readAgain(true);
}

export async function keepLocate(entry: Unsent<OutboxLocate>): Promise<void> {
  await inStores(['outbox'], 'readwrite', ({ outbox }) => outbox.put({ ...entry, kind: 'locate', refused: null }));
  await readAgain(true);
}

/** What one press answers is kept in one step, all of it or none; each answer is judged by itself. */
export async function keepAnswers(answers: readonly Unsent<OutboxAnswer>[]): Promise<void> {
  await inStores(['outbox'], 'readwrite', async ({ outbox }) => {
    for (const entry of answers) await outbox.put({ ...entry, kind: 'answer', refused: null });
  });
  await readAgain(true);
}

export async function keepDaywork(entry: Unsent<OutboxDaywork>): Promise<void> {
  await inStores(['outbox'], 'readwrite', ({ outbox }) => outbox.put({ ...entry, kind: 'daywork', refused: null }));
  await readAgain(true);
}

const mostSeen = 200;

/** What one press records is kept in one step, all of it or none, and each in the knowledge of those before it. */
export async function keepFacts(memberId: string, jobId: string, facts: readonly NewFact[]): Promise<void> {
  await keepNumbered(memberId, (next, put) => {
    const before: string[] = [];
    for (const fact of facts) before.push(put(factEntry(memberId, jobId, { ...fact, seen: [...fact.seen, ...before].slice(-mostSeen), ...next() })).id);
  });
}

/** Takes back a photo that a person did not want, as long as it is on this phone only and proves nothing. */
export async function dropPhoto(id: string): Promise<void> {
  const names = entries.some((entry) => entry.kind === 'fact' && entry.fact.kind === 'photo' && entry.fact.photoId === id);
  const photo = entries.filter((entry) => (entry.kind === 'photo' ? entry.id : entry.kind === 'photoMore' ? entry.photoId : null) === id);
  if (!names && photo.length > 0) await removeEntries(photo);
}

function factEntry(memberId: string, jobId: string, fact: FieldFact): Unkept<OutboxFact> {
  return { kind: 'fact', id: fact.id, memberId, jobId, refused: null, fact };
}

/** A fact about one entry of a survey; the survey begins on this phone with its fact `begun`. */
export async function keepSurveyFact(memberId: string, jobId: string, surveyId: string, draft: SurveyDraft): Promise<SurveyFact> {
  return keepNumbered(memberId, (next, put) => {
    const fact: SurveyFact = { ...draft, ...next(), jobId, surveyId };
    put({ kind: 'surveyFact', id: fact.id, memberId, jobId, refused: null, fact });
    return fact;
  });
}

type Numbers = Pick<FieldFact, 'id' | 'deviceId' | 'seq' | 'deviceTime' | 'factVersion'>;
type Unkept<E extends OutboxEntry> = Omit<E, 'at'>;
type Puttable = Unkept<OutboxPhoto> | Unkept<OutboxPhotoMore> | Unkept<OutboxFact> | Unkept<OutboxSurveyFact>;
type Put = <E extends Puttable>(entry: E) => E;

/** The numbers of facts and all that is put are kept in one step, so that no number is used twice, whatever stops the phone. */
async function keepNumbered<T>(memberId: string, work: (next: () => Numbers, put: Put) => T): Promise<T> {
  const fresh: Device = { id: uuidv7(), seq: 0, registered: false };
  const deviceTime = new Date().toISOString();
  const result = await inStores(['outbox', 'devices'], 'readwrite', async ({ outbox, devices }) => {
    const device = ((await devices.get(memberId)) as Device | undefined) ?? fresh;
    let { seq } = device;
    const put: Puttable[] = [];
    const made = work(() => ({ id: uuidv7(), deviceId: device.id, seq: (seq += 1), deviceTime, factVersion: 1 }), (entry) => {
      put.push(entry);
      return entry;
    });
    // Asked of the store at once, in this order: each turn to it and back is felt under a thumb.
    const [, ...kept] = await Promise.all([
      seq > device.seq ? devices.put({ ...device, seq }, memberId) : null,
      ...put.map(async (entry): Promise<OutboxEntry> => ({ ...entry, at: (await outbox.put(entry)) as number })),
    ]);
    return { made, kept };
  });
  // What was just kept is known; all the rest need not be read for it.
  entries = [...entries, ...result.kept].sort((a, b) => a.at - b.at);
  changed();
  otherTabs?.postMessage('changed');
  return result.made;
}

export async function deviceOf(memberId: string): Promise<Device | undefined> {
  return (await inStores(['devices'], 'readonly', ({ devices }) => devices.get(memberId))) as Device | undefined;
}

export async function markRegistered(memberId: string): Promise<void> {
  await inStores(['devices'], 'readwrite', async ({ devices }) => {
    const device = (await devices.get(memberId)) as Device | undefined;
    if (device) await devices.put({ ...device, registered: true }, memberId);
  });
}

export async function removeEntries(gone: readonly OutboxEntry[]): Promise<void> {
  await inStores(['outbox'], 'readwrite', async ({ outbox }) => {
    for (const { at } of gone) await outbox.remove(at);
  });
  await readAgain(true);
}

/** Null lets the entries be tried again. */
export async function markRefused(which: readonly OutboxEntry[], code: string | null): Promise<void> {
  await inStores(['outbox'], 'readwrite', async ({ outbox }) => {
    for (const entry of which) await outbox.put({ ...entry, refused: code });
  });
  await readAgain(true);
}

/** A video goes as soon as it can, whatever the network costs. */
export async function sendOverAny(entry: OutboxPhoto): Promise<void> {
  await inStores(['outbox'], 'readwrite', ({ outbox }) => outbox.put({ ...entry, now: true }));
  await readAgain(true);
}

/** What a phone could not send while it was cut off: no reason to throw it away, and nothing that a person has to decide. */
export function isSetAside({ refused }: Pick<OutboxEntry, 'refused'>): boolean {
  return refused === 'auth.phoneCutOff';
}

/** Its person has signed in again: it goes to the office like whatever else waits. */
export async function takeUpAgain(memberId: string): Promise<void> {
  await loadOutbox();
  const aside = entries.filter((entry) => entry.memberId === memberId && isSetAside(entry));
  if (aside.length > 0) await markRefused(aside, null);
}

async function readAgain(tell: boolean): Promise<void> {
  entries = (await inStores(['outbox'], 'readonly', ({ outbox }) => outbox.all())) as OutboxEntry[];
  changed();
  if (tell) otherTabs?.postMessage('changed');
}

function changed(): void {
  isRead = true;
  for (const listener of listeners) listener();
}
