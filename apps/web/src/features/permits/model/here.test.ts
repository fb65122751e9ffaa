import { permitStates, type PermitState, type Permits } from '@yardfall/contracts';
import { describe, expect, test } from 'vitest';
import type { JobAnswer, OutboxAnswer } from '../../../lib/outbox.ts';
import { hereWords, outletKey, permitKey, permitsHere, type ApprovalHere } from './here.ts';
import { openCount } from './open.ts';

const said = { number: 'B-7', note: 'x', on: '2026-03-01', expiresOn: null, photoId: null };
const told = (permit: Permits['permits'][number]['gap'], outlet: Permits['permits'][number]['gap']): Permits => ({
  permits: [{ kind: 'tree', usual: false, answer: null, gap: permit }], revisionId: 'r',
  outlets: [{ outlet: 'O1', name: 'Swale', questions: [{ question: 'O3', design: 'unknown', answer: null, gap: outlet }] }],
});
let count = 0;
function kept(answer: JobAnswer, refused: string | null = null): OutboxAnswer {
  count += 1;
  return { at: count, id: String(count), memberId: 'm', jobId: 'j', refused, kind: 'answer', answer };
}
const tree = (state: PermitState, expiresOn: string | null = null): JobAnswer => ({ what: 'permit', said: { kind: 'tree', state, ...said, expiresOn } });
const o3 = (state: PermitState): JobAnswer => ({ what: 'outlet', said: { revisionId: 'r', outlet: 'O1', question: 'O3', state, ...said } });
const here = (office: Permits, ...entries: readonly OutboxAnswer[]) => permitsHere(office, entries, 'j', '2026-03-02');
const gap = (office: Permits, ...entries: readonly OutboxAnswer[]) => here(office, ...entries).permits.permits[0]?.gap;

describe('an approval on this phone', () => {
  test.each(permitStates)('%s frees nothing before the office has it', (state) => {
    expect(gap(told('unknown', null), kept(tree(state)))).toBe(state === 'refused' ? 'refused' : 'unknown');
    expect(gap(told('refused', null), kept(tree(state)))).toBe('refused');
  });
  test('that says no, or is not there yet, or has run out holds at once, though the office knows of a yes', () => {
    const states = (['unknown', 'applied', 'refused'] as const).map((state) => gap(told(null, null), kept(tree(state))));
    expect(states).toEqual(['unknown', 'applied', 'refused']);
    expect(gap(told(null, null), kept(tree('granted', '2026-03-01')))).toBe('expired');
    expect(gap(told(null, null), kept(tree('granted')))).toBeNull();
  });
  test('that was corrected on the phone counts as corrected; a no that the office did not take counts on', () => {
    expect(gap(told(null, null), kept(tree('refused')), kept(tree('granted')))).toBeNull();
    expect(gap(told(null, null), kept(tree('refused'), 'request.invalid'), kept(tree('granted')))).toBe('refused');
  });
  test('of an outlet holds in the same way, and each stands where it was asked', () => {
    const { permits, kept: known } = here(told(null, null), kept(o3('refused')), kept(tree('granted')));
    expect([permits.outlets[0]?.questions[0]?.gap, openCount(permits)]).toEqual(['refused', 1]);
    expect([known.get(permitKey('tree'))?.length, known.get(outletKey('O1', 'O3'))?.length]).toEqual([1, 1]);
  });
  test('says whether it counts here already', () => {
    const words = (answer: JobAnswer, refused: string | null = null) => hereWords(kept(answer, refused) as ApprovalHere, '2026-03-02');
    expect([words(tree('granted')), words(tree('applied')), words(o3('refused')), words(tree('granted'), 'notFound')])
      .toEqual(['permits.here.waits', 'permits.here.holds', 'permits.here.holds', 'locates.here.refused']);
  });
});
