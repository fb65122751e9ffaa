import { diagnose, diagnosisReferrals, type DiagnosisAnswers, type FoldedSurvey, type StepAnswer, type SurveyEntry } from '@yardfall/contracts';
import { v5 as uuidv5 } from 'uuid';
import type { FactDraft } from '../../../lib/outbox.ts';
import type { BookHead, PointRole, ShotKind } from './fieldBook.ts';
import { answersOf, nextPlace } from './fromFold.ts';
import type { ListedShot } from './listBook.ts';

export interface NewShot {
  readonly id: string;
  readonly kind: ShotKind;
  readonly point: string;
  readonly role: PointRole;
  readonly value: number;
  readonly distance: number | null;
  readonly tailwater: number | null;
}

type Place = { readonly x: number; readonly y: number };

const allObservations = [...new Set(diagnosisReferrals.flatMap(({ observation }) => observation ?? []))];
const noSights = { backsight: null, intermediate: null, foresight: null, direct: null };

function entryOf<K extends 'reading' | 'point' | 'diagnosis' | 'observation'>(fold: FoldedSurvey, kind: K, key: string): SurveyEntry<K> | undefined {
  return fold.entries.find((entry): entry is Extract<typeof entry, { readonly kind: K }> => entry.key === key && entry.kind === kind) as SurveyEntry<K> | undefined;
}

export function beginFacts(fold: FoldedSurvey, name: string, head: BookHead): FactDraft[] {
  const begun: FactDraft[] = fold.name === '' ? [{ kind: 'begun', entry: 'survey', value: { name } }] : [];
  return [...begun, { kind: 'benchMark', entry: 'benchMark', value: { ...head.benchMark } }, { kind: 'mode', entry: 'mode', value: head.mode }];
}

/** What a point is goes down once, and again only when it says something new. */
function pointFacts(fold: FoldedSurvey, shot: Pick<NewShot, 'point' | 'role' | 'distance' | 'tailwater'>): FactDraft[] {
  const before = entryOf(fold, 'point', `point:${shot.point}`);
  const known = before === undefined || before.struck ? undefined : before.value;
  const role = shot.role === 'other' ? known?.role ?? 'other' : shot.role;
  const value = { point: shot.point, role, station: known?.station ?? null, distance: shot.distance ?? known?.distance ?? null, tailwater: shot.tailwater ?? known?.tailwater ?? null };
  const plain = value.role === 'other' && value.distance === null;
  const same = known !== undefined && known.role === value.role && known.distance === value.distance && known.tailwater === value.tailwater;
  return plain || same ? [] : [{ kind: 'point', entry: `point:${shot.point}`, value }];
}

/** A shot into the book, behind every other; first what the point is, so that no phone shows a shot without it. */
export function shotFacts(fold: FoldedSurvey, shot: NewShot): FactDraft[] {
  const { id, kind, point, value } = shot;
  return [...pointFacts(fold, shot), { kind: 'reading', entry: `reading:${id}`, value: { ...noSights, id, point, note: '', [kind]: value, place: nextPlace(fold), pin: null, photoIds: [] } }];
}

export function listFacts(fold: FoldedSurvey, shots: readonly ListedShot[], newId: () => string): FactDraft[] {
  const start = nextPlace(fold);
  return shots.flatMap(({ point, role, direct, note, pin }, at): FactDraft[] => {
    const id = newId();
    const named = pointFacts(fold, { point, role, distance: null, tailwater: null });
    return [...named, { kind: 'reading', entry: `reading:${id}`, value: { ...noSights, id, point, note, direct, place: start + at, pin: { ...pin }, photoIds: [] } }];
  });
}

/** A struck shot stays in the book; one that counts again is written down as it was. */
export function strikeFacts(fold: FoldedSurvey, entry: string, struck: boolean): FactDraft[] {
  const known = entryOf(fold, 'reading', entry);
  if (known === undefined || known.struck === struck) return [];
  return struck ? [{ kind: 'struck', entry, reason: '' }] : [{ kind: 'reading', entry, value: known.value }];
}

export function shotPhotoFacts(fold: FoldedSurvey, entry: string, photoId: string): FactDraft[] {
  const known = entryOf(fold, 'reading', entry);
  return known === undefined ? [] : [{ kind: 'reading', entry, value: { ...known.value, photoIds: [...known.value.photoIds, photoId] } }];
}

export function pinFacts(fold: FoldedSurvey, entry: string, pin: Place): FactDraft[] {
  const known = entryOf(fold, 'reading', entry);
  return known === undefined ? [] : [{ kind: 'reading', entry, value: { ...known.value, pin: { ...pin } } }];
}

export function stepPhotoFacts(fold: FoldedSurvey, step: string, photoId: string): FactDraft[] {
  const known = entryOf(fold, 'diagnosis', `diagnosis:${step}`)?.value ?? { picks: [], figures: {}, note: '', pin: null, photoIds: [] };
  return [{ kind: 'diagnosis', entry: `diagnosis:${step}`, value: { ...known, photoIds: [...known.photoIds, photoId] } }];
}

export interface AnswerWords {
  readonly drainName: string;
  /** What was seen, in words, by the observation that it makes. */
  readonly observation: (id: string) => string;
}

/** An answer, and with it what it makes known to the design: the test of an old drain, and what must be referred. */
export function answerFacts(fold: FoldedSurvey, surveyId: string, step: string, answer: StepAnswer, words: AnswerWords): FactDraft[] {
  const before = entryOf(fold, 'diagnosis', `diagnosis:${step}`)?.value;
  const value = { picks: [...answer.picks], figures: { ...answer.figures }, note: before?.note ?? '', pin: before?.pin ?? null, photoIds: before?.photoIds ?? [] };
  const answers: DiagnosisAnswers = { ...answersOf(fold), [step]: answer };
  return [{ kind: 'diagnosis', entry: `diagnosis:${step}`, value }, ...drainFacts(surveyId, answers, words), ...observationFacts(fold, surveyId, answers, words)];
}

function drainFacts(surveyId: string, answers: DiagnosisAnswers, { drainName }: AnswerWords): FactDraft[] {
  const drain = answers['drainFlow'];
  const { diameter, flow, seconds } = drain?.figures ?? {};
  if (drain === undefined || diameter === undefined || flow === undefined) return [];
  const id = uuidv5('drainFlow', surveyId);
  const value = {
    id, name: drainName, diameter, hoseFlow: flow, backedUpAfter: drain.picks.includes('backedUp') ? seconds ?? null : null,
    dyeSeen: answers['dye']?.picks.includes('atOutlet') ?? false, cameraStop: answers['camera']?.figures['stop'] ?? null, pin: null, photoIds: [],
  };
  return [{ kind: 'drainTest', entry: `drainTest:${id}`, value }];
}

/** What the answers refer is an observation of the survey; one that they no longer bear out is struck. */
function observationFacts(fold: FoldedSurvey, surveyId: string, answers: DiagnosisAnswers, { observation: wordsOf }: AnswerWords): FactDraft[] {
  const kinds = new Map<string, string>();
  for (const { id, observation } of diagnose(answers).referrals) if (observation !== null && !kinds.has(observation)) kinds.set(observation, id);
  const ours = new Set(allObservations.map((kind) => `observation:${uuidv5(kind, surveyId)}`));
  const standing = fold.entries.filter(({ key, struck }) => ours.has(key) && !struck).map(({ key }) => key);
  const wanted = new Map([...kinds].map(([kind, referral]) => [`observation:${uuidv5(kind, surveyId)}`, { kind, referral }]));
  return [
    ...standing.filter((key) => !wanted.has(key)).map((entry): FactDraft => ({ kind: 'struck', entry, reason: '' })),
    ...[...wanted].filter(([key]) => !standing.includes(key)).map(([entry, { kind, referral }]): FactDraft => ({ kind: 'observation', entry, value: { id: entry.slice('observation:'.length), kind, note: wordsOf(referral), pin: null, photoIds: [] } })),
  ];
}
