import { foldSurvey, type DiagnosisAnswers, type FoldedSurvey, type StepAnswer } from '@yardfall/contracts';
import { useMemo, useState } from 'react';
import { v7 as uuidv7 } from 'uuid';
import { useKeepPhoto } from '../../../hooks/useRecord.ts';
import { keep, kept } from '../../../lib/keep.ts';
import { useText } from '../../../lib/reader.tsx';
import type { BookHead, FieldBook } from '../model/fieldBook.ts';
import { answersOf, bookOf } from '../model/fromFold.ts';
import type { ListedShot } from '../model/listBook.ts';
import { answerFacts, beginFacts, listFacts, pinFacts, shotFacts, shotPhotoFacts, stepPhotoFacts, strikeFacts, type NewShot } from '../model/yardFacts.ts';
import type { FactDraft } from '../../../lib/outbox.ts';
import { useSurveyFacts, type SurveyOnPhone } from '../../../hooks/useSurveyFacts.ts';

type Place = { readonly x: number; readonly y: number };

export interface Visit {
  readonly id: string;
  readonly name: string;
}

/** The survey of one visit, read from office and phone together; whatever is written is on this phone first. */
export interface YardBook {
  readonly pending: boolean;
  readonly problem: unknown;
  readonly visits: readonly Visit[];
  readonly visit: string | null;
  readonly openVisit: (id: string | null) => void;
  /** Null before the first head of the book. */
  readonly book: FieldBook | null;
  readonly answers: DiagnosisAnswers;
  readonly disputed: readonly string[];
  readonly photosOf: (step: string) => readonly string[];
  readonly isInOffice: (entry: string) => boolean;
  readonly begin: (head: BookHead) => void;
  readonly beginFromList: (head: BookHead, shots: readonly ListedShot[]) => void;
  readonly keepShot: (shot: NewShot) => void;
  readonly strike: (entry: string, struck: boolean) => void;
  readonly pin: (entry: string, pin: Place) => void;
  readonly addPhoto: (entry: string, note: string, file: File) => void;
  readonly answer: (step: string, answer: StepAnswer) => void;
  readonly addStepPhoto: (step: string, note: string, file: File) => void;
}

const FOOT = 0.3048;
const usualRod = 13 * FOOT;
const nothing = foldSurvey([], null);

function foldOf(survey: SurveyOnPhone | undefined): FoldedSurvey {
  return survey === undefined ? nothing : foldSurvey(survey.facts, survey.base);
}

/** The length of the rod is the phone's own matter: it goes with the van and not with the site. */
function rodHere(): number {
  const length = kept('rodLength');
  return typeof length === 'number' && length > 0 ? length : usualRod;
}

export function useYardBook(jobId: string): YardBook {
  const { t } = useText();
  const facts = useSurveyFacts(jobId);
  const keepPhoto = useKeepPhoto(jobId);
  const [chosen, setChosen] = useState<string | null>(() => { const id = kept(`yard.${jobId}`); return typeof id === 'string' ? id : null; });
  const [rod, setRod] = useState(rodHere);
  const [problem, setProblem] = useState<unknown>(null);
  const survey = chosen === null ? facts.surveys.at(-1) : facts.surveys.find(({ id }) => id === chosen);
  const fold = useMemo(() => foldOf(survey), [survey]);
  const waiting = useMemo(() => new Set(survey?.waiting ?? []), [survey]);

  const openVisit = (id: string | null) => {
    keep(`yard.${jobId}`, id ?? 'new');
    setChosen(id ?? 'new');
  };
  const write = (drafts: (now: FoldedSurvey, surveyId: string) => readonly FactDraft[]) => {
    const id = survey?.id ?? (chosen === null || chosen === 'new' ? uuidv7() : chosen);
    const name = t('surveys.visit', { n: facts.surveys.length + 1 });
    if (survey === undefined) openVisit(id);
    facts.keep(id, (now) => {
      const fold = foldOf(now);
      // A survey that is born by an answer or a photo needs a name too.
      const own = drafts(fold, id);
      const born = fold.name === '' && !own.some(({ kind }) => kind === 'begun');
      return born ? [{ kind: 'begun', entry: 'survey', value: { name } }, ...own] : own;
    }).then(() => setProblem(null), setProblem);
  };
  const withPhoto = (file: File, note: string, drafts: (now: FoldedSurvey, photoId: string) => readonly FactDraft[]) => {
    keepPhoto.mutate({ file, itemKey: null, part: null, note: note.slice(0, 1000), forCustomer: false }, {
      onSuccess: ({ id }) => write((now) => drafts(now, id)), onError: setProblem,
    });
  };
  const setHead = (head: BookHead) => {
    keep('rodLength', head.rod);
    setRod(head.rod);
  };
  const words = { drainName: t('surveys.drainDefault'), observation: (id: string) => t(`surveys.refer.${id as 'leak'}`) };
  const visitName = () => t('surveys.visit', { n: facts.surveys.length + (survey === undefined ? 1 : 0) });
  return {
    pending: facts.pending, problem: problem ?? facts.problem, disputed: fold.disputed,
    visits: facts.surveys.map((one) => ({ id: one.id, name: foldOf(one).name })), visit: survey?.id ?? null, openVisit,
    book: fold.entries.some(({ kind }) => kind === 'benchMark') ? bookOf(fold, rod, waiting) : null,
    answers: answersOf(fold),
    photosOf: (step) => fold.entries.flatMap((entry) => (entry.kind === 'diagnosis' && entry.key === `diagnosis:${step}` ? [...entry.value.photoIds] : [])),
    isInOffice: (entry) => !waiting.has(entry),
    begin: (head) => { setHead(head); write((now) => beginFacts(now, visitName(), head)); },
    beginFromList: (head, shots) => { setHead(head); write((now) => [...beginFacts(now, visitName(), head), ...listFacts(now, shots, uuidv7)]); },
    keepShot: (shot) => write((now) => shotFacts(now, shot)),
    strike: (entry, struck) => write((now) => strikeFacts(now, entry, struck)),
    pin: (entry, pin) => write((now) => pinFacts(now, entry, pin)),
    addPhoto: (entry, note, file) => withPhoto(file, note, (now, id) => shotPhotoFacts(now, entry, id)),
    answer: (step, answer) => write((now, surveyId) => answerFacts(now, surveyId, step, answer, words)),
    addStepPhoto: (step, note, file) => withPhoto(file, note, (now, id) => stepPhotoFacts(now, step, id)),
  };
}
