import { createHash } from 'node:crypto';
import type { DesignDocument, Outlet } from '@yardfall/calc';
import { canonicalBytes, type OutletQuestion, outletQuestionIds, outletQuestions, type Permit, permitGap, type PermitAnswer, permitKinds, type Permits, type PermitState, usualPermits } from '@yardfall/contracts';
import { type AnswerRecord, answerKey } from './answers.ts';
import { dayOf } from './propertyDay.ts';

type Latest = ReadonlyMap<string, AnswerRecord>;

export interface Answered {
  readonly permits: Latest;
  readonly outlets: Latest;
}

/** What an outlet answer is about: the outlet as it was. When anything about it changes but its name, the question is asked again. */
export function outletHash({ name: _name, questions: _questions, ...place }: Outlet): string {
  return createHash('sha256').update(canonicalBytes(place)).digest('hex');
}

export function outletsOf({ system }: DesignDocument): readonly Outlet[] {
  return system.parts.filter((part) => part.kind === 'outlet');
}

/** @param document the design that would be dug; null while none is issued */
export function permitsNow(document: DesignDocument | null, { permits, outlets }: Answered, today: string): Omit<Permits, 'revisionId'> {
  const usual = document === null ? new Set<string>() : usualPermits(document);
  return {
    permits: permitKinds.map((kind): Permit => {
      const answer = presentAnswer(permits.get(answerKey(kind, '')));
      return { kind, usual: usual.has(kind), answer, gap: permitGap(answer, today) };
    }),
    outlets: document === null ? [] : outletsOf(document).map((outlet) => ({ outlet: outlet.id, name: outlet.name, questions: questionsOf(outlet, outlets, today) })),
  };
}

function questionsOf(outlet: Outlet, answers: Latest, today: string): OutletQuestion[] {
  const about = outletHash(outlet);
  return outletQuestionIds.map((question) => {
    const design = outlet.questions[outletQuestions[question]];
    const answer = presentAnswer(answers.get(answerKey(question, about)));
    if (answer !== null) return { question, design, answer, gap: permitGap(answer, today) };
    return { question, design, answer, gap: design === 'unknown' ? 'unknown' : design === 'no' ? 'refused' : null };
  });
}

export function presentAnswer(row: AnswerRecord | undefined): PermitAnswer | null {
  if (row === undefined) return null;
  const { state, number, note, onDate, expiresOn, photoId, at, recordedBy } = row;
  const day = (date: Date | null) => (date === null ? null : dayOf(date));
  return { state: state as PermitState, number, note, on: day(onDate), expiresOn: day(expiresOn), photoId, at: at.toISOString(), by: recordedBy.name };
}

/** Everything that holds the release, each by its name. */
export function gapsOf({ permits, outlets }: Omit<Permits, 'revisionId'>): { readonly code: 'jobs.held.outletQuestion' | 'jobs.held.permit'; readonly params: Readonly<Record<string, string>> }[] {
  return [
    ...outlets.flatMap(({ name, questions }) => questions.flatMap(({ question, gap }) =>
      gap === null ? [] : [{ code: 'jobs.held.outletQuestion' as const, params: { outlet: name, question, asks: `designs.question.${outletQuestions[question]}`, why: `permits.gap.${gap}` } }])),
    ...permits.flatMap(({ kind, gap }) => (gap === null ? [] : [{ code: 'jobs.held.permit' as const, params: { permit: `permits.kind.${kind}`, why: `permits.gap.${gap}` } }])),
  ];
}
