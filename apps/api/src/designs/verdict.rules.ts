import type { DesignDocument, Evaluation, Finding } from '@yardfall/calc';
import { isReferred, openQuestions } from '../jobs/release.rules.ts';

export interface StoredAcknowledgement {
  readonly code: string;
  readonly at: string | null;
  readonly memberId: string;
  readonly by: string;
  readonly when: string;
  readonly note: string;
}

const isSame = (a: { code: string; at: string | null }, b: { code: string; at: string | null }) => a.code === b.code && a.at === b.at;
const cautionsOf = (evaluation: Evaluation) => evaluation.findings.filter((finding) => finding.severity === 'caution');

export function cautionAt(evaluation: Evaluation, code: string, at: string | null): Finding | null {
  return cautionsOf(evaluation).find((finding) => isSame(finding, { code, at })) ?? null;
}

export function countsOf(document: DesignDocument, evaluation: Evaluation): { stopCount: number; cautionCount: number; provisional: boolean } {
  return {
    stopCount: evaluation.findings.filter((finding) => finding.severity === 'stop').length,
    cautionCount: cautionsOf(evaluation).length,
    provisional: openQuestions(document).length > 0,
  };
}

/** What a person accepted stands only as long as it is the same caution with the same figures. */
export function stillAccepted(before: Evaluation | null, after: Evaluation, given: readonly StoredAcknowledgement[]): StoredAcknowledgement[] {
  return given.filter(({ code, at }) => {
    const was = before === null ? null : cautionAt(before, code, at);
    const is = cautionAt(after, code, at);
    return was !== null && is !== null && JSON.stringify([was.params, was.limit]) === JSON.stringify([is.params, is.limit]);
  });
}

export type IssueVerdict =
  | { readonly kind: 'free' }
  | { readonly kind: 'referred' | 'stopped' | 'unacknowledged'; readonly findings: readonly { code: string; at: string | null }[] };

/** Whether a design may be issued: no engineer needed, nothing that stops it, and every caution accepted by name. */
export function mayIssue(evaluation: Evaluation, given: readonly StoredAcknowledgement[]): IssueVerdict {
  if (isReferred(evaluation)) return { kind: 'referred', findings: evaluation.findings.filter((finding) => finding.severity === 'refer') };
  const stops = evaluation.findings.filter((finding) => finding.severity === 'stop');
  if (stops.length > 0) return { kind: 'stopped', findings: stops };
  const open = cautionsOf(evaluation).filter((finding) => !given.some((ack) => isSame(ack, finding)));
  return open.length > 0 ? { kind: 'unacknowledged', findings: open } : { kind: 'free' };
}
