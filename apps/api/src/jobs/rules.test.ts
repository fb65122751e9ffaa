import { readFileSync } from 'node:fs';
import type { DesignDocument, Evaluation } from '@yardfall/calc';
import { permitKinds } from '@yardfall/contracts';
import { isMessageCode, render } from '@yardfall/text';
import { describe, expect, test } from 'vitest';
import { answerKey, type AnswerRecord } from './answers.ts';
import { outletHash, outletsOf, permitsNow } from './permits.rules.ts';
import { letterOf } from './referral.rules.ts';
import { heldReasons, openQuestions } from './release.rules.ts';
import { holdOf, isLater, mayMoveByHand, stageHoldCodes, way } from './stages.rules.ts';

const site = (name: string) => JSON.parse(readFileSync(new URL(`../../../../prisma/seed/sites/${name}.json`, import.meta.url), 'utf8')) as DesignDocument;
const ternHollow = site('tern-hollow');
const evaluation = { results: { referrals: [] }, findings: [] } as unknown as Evaluation;
const answer = (kind: string, state: string) => ({ kind, about: '', state, number: '', note: 'told', onDate: null, expiresOn: null, photoId: null, at: new Date(0), recordedBy: { name: 'A' } }) as AnswerRecord;
const noneNeeded = new Map(permitKinds.map((kind) => [answerKey(kind, ''), answer(kind, 'notNeeded')]));
const today = '2026-03-02';
const permits = permitsNow(ternHollow, { permits: noneNeeded, outlets: new Map() }, today);
const good = { offerAccepted: true, revisionIssued: true, permits, evaluation, openFoundReports: 0 };

describe('the release to dig', () => {
  test('nothing holds an accepted offer of an issued design with every outlet question answered', () => {
    expect(heldReasons(good)).toEqual([]);
  });
  test('every reason is told, not only the first', () => {
    const parts = ternHollow.system.parts.map((part) => (part.kind === 'outlet' && part.id === 'O1' ? { ...part, questions: { ...part.questions, permissionHeld: 'unknown' as const } } : part));
    const document = { ...ternHollow, system: { parts } };
    expect(openQuestions(document)).toEqual([{ outlet: 'O1', question: 'O3' }]);
    const reasons = heldReasons({ offerAccepted: false, revisionIssued: false, permits: permitsNow(document, { permits: noneNeeded, outlets: new Map() }, today), evaluation: null, openFoundReports: 2 });
    expect(reasons.map(({ code }) => code)).toEqual(['jobs.held.offerNotAccepted', 'jobs.held.revisionNotIssued', 'jobs.held.outletQuestion', 'jobs.held.foundOpen']);
    expect(reasons.every(({ code }) => isMessageCode(code))).toBe(true);
  });
  test('an approval holds until it is granted or not needed', () => {
    const held = (state: string | null) => {
      const given = new Map(noneNeeded);
      if (state === null) given.delete(answerKey('electrical', ''));
      else given.set(answerKey('electrical', ''), answer('electrical', state));
      return heldReasons({ ...good, permits: permitsNow(ternHollow, { permits: given, outlets: new Map() }, today) }).map(({ code, params }) => render('en', 'us', code, params));
    };
    expect(held(null)).toEqual(['Electrical permit: not answered yet.']);
    expect(held('applied')).toEqual(['Electrical permit: applied for, not granted yet.']);
    expect(held('refused')).toEqual(['Electrical permit: the answer is no.']);
    expect([held('granted'), held('notNeeded')]).toEqual([[], []]);
    expect(permits.permits.filter(({ usual }) => usual).map(({ kind }) => kind)).toContain('electrical');
  });
  test('an outlet answer counts for the outlet as it is, whatever its name, and a later no takes a yes back', () => {
    const [outlet] = outletsOf(ternHollow);
    if (outlet === undefined) throw new Error('no outlet');
    const open = { ...outlet, questions: { ...outlet.questions, permissionHeld: 'unknown' as const } };
    const held = (part: typeof outlet, state: string) => {
      const document = { ...ternHollow, system: { parts: ternHollow.system.parts.map((one) => (one.id === outlet.id ? part : one)) } };
      return heldReasons({ ...good, permits: permitsNow(document, { permits: noneNeeded, outlets: new Map([[answerKey('O3', outletHash(outlet)), answer('O3', state)]]) }, today) }).map(({ params }) => [params.question, params.why]);
    };
    expect(held({ ...open, name: 'Swale' }, 'granted')).toEqual([]);
    expect(held({ ...open, level: open.level + 0.1 }, 'granted')).toEqual([['O3', 'permits.gap.unknown']]);
    expect(held(outlet, 'refused')).toEqual([['O3', 'permits.gap.refused']]);
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
