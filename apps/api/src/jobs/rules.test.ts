import { readFileSync } from 'node:fs';
import type { DesignDocument, Evaluation } from '@yardfall/calc';
import { isMessageCode } from '@yardfall/text';
import { describe, expect, test } from 'vitest';
import { letterOf } from './referral.rules.ts';
import { heldReasons, openQuestions } from './release.rules.ts';
import { holdOf, isLater, mayMoveByHand, stageHoldCodes, way } from './stages.rules.ts';

const site = (name: string) => JSON.parse(readFileSync(new URL(`../../../../prisma/seed/sites/${name}.json`, import.meta.url), 'utf8')) as DesignDocument;
const ternHollow = site('tern-hollow');
const evaluation = { results: { referrals: [] }, findings: [] } as unknown as Evaluation;
const good = { offerAccepted: true, revisionIssued: true, document: ternHollow, evaluation, openFoundReports: 0 };

describe('the release to dig', () => {
  test('nothing holds an accepted offer of an issued design with every outlet question answered', () => {
    expect(heldReasons(good)).toEqual([]);
  });
  test('every reason is told, not only the first', () => {
    const parts = ternHollow.system.parts.map((part) => (part.kind === 'outlet' && part.id === 'O1' ? { ...part, questions: { ...part.questions, permissionHeld: 'unknown' as const } } : part));
    const document = { ...ternHollow, system: { parts } };
    expect(openQuestions(document)).toEqual([{ outlet: 'O1', question: 'O3' }]);
    const reasons = heldReasons({ offerAccepted: false, revisionIssued: false, document, evaluation: null, openFoundReports: 2 });
    expect(reasons.map(({ code }) => code)).toEqual(['jobs.held.offerNotAccepted', 'jobs.held.revisionNotIssued', 'jobs.held.outletQuestion', 'jobs.held.foundOpen']);
    expect(reasons.every(({ code }) => isMessageCode(code))).toBe(true);
  });
  test('a site that goes to an engineer is never released', () => {
    const referred = { ...evaluation, results: { ...evaluation.results, referrals: ['engineer'] } };
    expect(heldReasons({ ...good, evaluation: referred }).map(({ code }) => code)).toEqual(['jobs.held.referred']);
  });
});

test('a stage is only left for a later one', () => {
  expect(isLater('offered', 'accepted')).toBe(true);
  expect(isLater('accepted', 'offered')).toBe(false);
  expect(isLater('referred', 'released')).toBe(false);
});

test('nobody moves a job by hand once it may be dug', () => {
  for (const stage of ['released', 'installing', 'proving', 'handedOver'] as const) {
    for (const to of ['visit', 'design', 'referred', 'declined'] as const) expect(mayMoveByHand(stage, to), `${stage} ${to}`).toBe(false);
  }
  expect(mayMoveByHand('intake', 'visit')).toBe(true);
  expect(mayMoveByHand('visit', 'referred')).toBe(true);
});

test('the hold of each stage has a text and is cleared by the next', () => {
  const codes = way.flatMap((stage) => holdOf(stage)?.code ?? []);
  expect(codes.every((code) => isMessageCode(code) && stageHoldCodes.includes(code))).toBe(true);
  expect(stageHoldCodes.filter((code) => !isMessageCode(code))).toEqual([]);
});

test('the letter of Sallow Bend names what was seen, who to call and what to keep away from', () => {
  const letter = letterOf(site('sallow-bend').site.observations);
  expect(letter.observations).toHaveLength(7);
  expect(letter.referTo).toEqual(['jobs.referral.to.engineer', 'jobs.referral.to.authority', 'jobs.referral.to.leakTest', 'jobs.referral.to.civil']);
  expect(letter.cautions).toContain('jobs.referral.caution.noLoad');
  const codes = [...letter.observations.map(({ code }) => code), ...letter.referTo, ...letter.cautions];
  expect(codes.filter((code) => !isMessageCode(code))).toEqual([]);
});
