import { causes, unnamed, type CauseId } from './causes.ts';
import { referrals, type ReferralId } from './referrals.ts';
import { diagnosisSteps, notDone } from './steps.ts';
import type { Callee, DiagnosisStep, ReferWeight, StepAnswer, When } from './types.ts';

/** Answers by step, in no order. */
export type DiagnosisAnswers = Readonly<Partial<Record<string, StepAnswer>>>;

export interface NamedCause {
  readonly id: CauseId;
  readonly state: 'proven' | 'suspected';
  /** Steps whose answer proved it. */
  readonly provenBy: readonly string[];
  /** Steps that could still prove it. */
  readonly testsLeft: readonly string[];
}

export interface NamedReferral {
  readonly id: ReferralId;
  readonly weight: ReferWeight;
  readonly call: readonly Callee[];
  readonly observation: string | null;
  readonly from: readonly string[];
}

export interface Diagnosis {
  /** The step that is asked next; null when nothing is left, or when nothing more is ours to ask. */
  readonly next: string | null;
  /** Steps that are asked and not answered, in order. */
  readonly open: readonly string[];
  readonly answered: readonly string[];
  /** Proven ones first. */
  readonly causes: readonly NamedCause[];
  readonly referrals: readonly NamedReferral[];
  /** Nothing is designed here. */
  readonly stopped: boolean;
}

function outcomesOf(step: DiagnosisStep, { picks, figures }: StepAnswer): string[] {
  const made = (step.outcomes ?? []).filter(({ figure, below, from }) => {
    const value = figures[figure];
    return value !== undefined && (below === undefined || value < below) && (from === undefined || value >= from);
  });
  return [...picks, ...made.map(({ outcome }) => outcome)];
}

/** A step that does not apply any more does not count, whatever was answered there. */
function standing(answers: DiagnosisAnswers): { readonly outcomes: ReadonlyMap<string, readonly string[]>; readonly asked: readonly DiagnosisStep[] } {
  const outcomes = new Map<string, readonly string[]>();
  const asked: DiagnosisStep[] = [];
  // A step may hang on one that is listed after it (a gutter count on its hose test), so the walk is repeated until it rests.
  for (let known = -1; known !== asked.length;) {
    known = asked.length;
    for (const step of diagnosisSteps) {
      if (asked.includes(step) || (step.when.length > 0 && !step.when.some((when) => holds(when, outcomes)))) continue;
      asked.push(step);
      const answer = answers[step.id];
      if (answer !== undefined) outcomes.set(step.id, outcomesOf(step, answer));
    }
  }
  return { outcomes, asked: diagnosisSteps.filter((step) => asked.includes(step)) };
}

function holds({ step, is }: When, outcomes: ReadonlyMap<string, readonly string[]>): boolean {
  return (outcomes.get(step) ?? []).some((outcome) => is.includes(outcome));
}

function causesOf(outcomes: ReadonlyMap<string, readonly string[]>, asked: readonly DiagnosisStep[]): NamedCause[] {
  const met = (list: readonly When[]) => list.filter((when) => holds(when, outcomes));
  const open = new Set(asked.filter(({ id }) => !outcomes.has(id) || outcomes.get(id)?.includes(notDone)).map(({ id }) => id));
  const found = causes.flatMap((cause): NamedCause[] => {
    const proofs = met(cause.proofs);
    const suspected = met(cause.signs).length > 0;
    if (proofs.length === 0 && (!suspected || met(cause.clears).length > 0)) return [];
    const steps = cause.proofs.map(({ step }) => step);
    return [{
      id: cause.id, state: proofs.length > 0 ? 'proven' : 'suspected', provenBy: [...new Set(proofs.map(({ step }) => step))],
      testsLeft: proofs.length > 0 ? [] : [...new Set(steps.filter((step) => open.has(step)))],
    }];
  });
  const ids = new Set(found.map(({ id }) => id));
  const named = found.filter(({ id }) => !(unnamed[id] ?? []).some((other) => ids.has(other)));
  return [...named.filter(({ state }) => state === 'proven'), ...named.filter(({ state }) => state === 'suspected')];
}

/**
 * Where a diagnosis stands: what is asked next, which causes are named and by which test, and who must be called.
 * A cause is proven by a test only; signs alone make it a suspect. Answers to steps that are no longer asked do not count.
 */
export function diagnose(answers: DiagnosisAnswers): Diagnosis {
  const { outcomes, asked } = standing(answers);
  const calls = referrals.flatMap((referral): NamedReferral[] => {
    const met = (referral.when as readonly When[]).filter((when) => holds(when, outcomes));
    return met.length === 0 ? [] : [{ id: referral.id, weight: referral.weight, call: referral.call, observation: referral.observation, from: met.map(({ step }) => step) }];
  });
  const stopped = calls.some(({ weight }) => weight !== 'along');
  const open = asked.filter(({ id }) => !outcomes.has(id)).map(({ id }) => id);
  // A leak is still looked for: the tests tell whom to call. Anything else that stops ends the questions.
  const leaks = calls.every(({ weight, observation }) => weight === 'along' || observation === 'waterOnDryDays');
  const left = !stopped ? open : leaks ? open.filter((id) => stepOf(id).family === 'leak') : [];
  return { next: left[0] ?? null, open, answered: [...outcomes.keys()], causes: causesOf(outcomes, asked), referrals: calls, stopped };
}

export function stepOf(id: string): DiagnosisStep {
  const step = diagnosisSteps.find((one) => one.id === id);
  if (step === undefined) throw new Error(`no step ${id}`);
  return step;
}
