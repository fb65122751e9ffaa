import type { DesignDocument, Evaluation } from '@yardfall/calc';
import { type OutletQuestionId, outletQuestionIds, outletQuestions, type Permits } from '@yardfall/contracts';
import { gapsOf, outletsOf } from './permits.rules.ts';

export interface HeldReason {
  readonly code: 'jobs.held.offerNotAccepted' | 'jobs.held.revisionNotIssued' | 'jobs.held.outletQuestion' | 'jobs.held.permit' | 'jobs.held.referred' | 'jobs.held.foundOpen';
  readonly params: Readonly<Record<string, string | number>>;
}

/** Outlet questions that the design itself leaves without an answer, as O1 to O10 with the outlet that they belong to. */
export function openQuestions(document: DesignDocument): { outlet: string; question: OutletQuestionId }[] {
  return outletsOf(document).flatMap(({ id, questions }) => outletQuestionIds.filter((question) => questions[outletQuestions[question]] === 'unknown').map((question) => ({ outlet: id, question })));
}

export function isReferred(evaluation: Evaluation): boolean {
  return evaluation.results.referrals.length > 0 || evaluation.findings.some((finding) => finding.severity === 'refer');
}

/** Everything that keeps the owner from releasing a job to dig; empty means that it may be dug. */
export function heldReasons(facts: {
  readonly offerAccepted: boolean;
  readonly revisionIssued: boolean;
  readonly permits: Pick<Permits, 'permits' | 'outlets'>;
  readonly evaluation: Evaluation | null;
  readonly openFoundReports: number;
}): HeldReason[] {
  const reasons: HeldReason[] = [];
  if (!facts.offerAccepted) reasons.push({ code: 'jobs.held.offerNotAccepted', params: {} });
  if (!facts.revisionIssued || facts.evaluation === null) reasons.push({ code: 'jobs.held.revisionNotIssued', params: {} });
  reasons.push(...gapsOf(facts.permits));
  if (facts.evaluation !== null && isReferred(facts.evaluation)) reasons.push({ code: 'jobs.held.referred', params: {} });
  if (facts.openFoundReports > 0) reasons.push({ code: 'jobs.held.foundOpen', params: { count: facts.openFoundReports } });
  return reasons;
}
