import type { DesignDocument, Evaluation, OutletQuestions } from '@yardfall/calc';

export interface HeldReason {
  readonly code: 'jobs.held.offerNotAccepted' | 'jobs.held.revisionNotIssued' | 'jobs.held.outletQuestion' | 'jobs.held.referred' | 'jobs.held.foundOpen';
  readonly params: Readonly<Record<string, string | number>>;
}

export const outletQuestions: Readonly<Record<keyof OutletQuestions, string>> = {
  outletTypeNamed: 'O1', ownerKnown: 'O2', permissionHeld: 'O3', notSanitarySewer: 'O4', notOntoNeighbour: 'O5', associationAgrees: 'O6',
  rightOfWayPermit: 'O7', noWetland: 'O8', clearOfSepticAndWell: 'O9', noEasementConflict: 'O10',
};

/** Outlet questions without an answer, as O1 to O10 with the outlet that they belong to. */
export function openQuestions(document: DesignDocument): { outlet: string; question: string }[] {
  return document.system.parts.flatMap((part) =>
    part.kind !== 'outlet'
      ? []
      : (Object.keys(outletQuestions) as (keyof OutletQuestions)[])
          .filter((key) => part.questions[key] === 'unknown')
          .map((key) => ({ outlet: part.id, question: outletQuestions[key] })),
  );
}

export function isReferred(evaluation: Evaluation): boolean {
  return evaluation.results.referrals.length > 0 || evaluation.findings.some((finding) => finding.severity === 'refer');
}

/** Everything that keeps the owner from releasing a job to dig; empty means that it may be dug. */
export function heldReasons(facts: {
  readonly offerAccepted: boolean;
  readonly revisionIssued: boolean;
  readonly document: DesignDocument;
  readonly evaluation: Evaluation | null;
  readonly openFoundReports: number;
}): HeldReason[] {
  const reasons: HeldReason[] = [];
  if (!facts.offerAccepted) reasons.push({ code: 'jobs.held.offerNotAccepted', params: {} });
  if (!facts.revisionIssued || facts.evaluation === null) reasons.push({ code: 'jobs.held.revisionNotIssued', params: {} });
  for (const { outlet, question } of openQuestions(facts.document)) reasons.push({ code: 'jobs.held.outletQuestion', params: { outlet, question } });
  if (facts.evaluation !== null && isReferred(facts.evaluation)) reasons.push({ code: 'jobs.held.referred', params: {} });
  if (facts.openFoundReports > 0) reasons.push({ code: 'jobs.held.foundOpen', params: { count: facts.openFoundReports } });
  return reasons;
}
