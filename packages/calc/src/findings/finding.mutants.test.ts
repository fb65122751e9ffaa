import { expect, it } from 'vitest';
import { FOOT, INCH } from '../common/constants.ts';
import { demoSite } from '../testing/sites.ts';
import type { Results } from '../results/results.ts';
import { graded, isMet, ruled, stated, type CheckInput } from './finding.ts';
import { judge } from './limit.ts';
import { limitsInForce } from './overrides.ts';
import { firstThat, remedyOf } from './patch.ts';

const input: CheckInput = { document: demoSite('tern-hollow'), results: {} as Results, limits: limitsInForce([]) };
const cure = () => remedyOf('remedy.gfci', {}, []);

it('a finding tells figures without end as nothing, and the limit that it stands under', () => {
  expect(stated('E1', 'ok', 'note', 'here', { at: 'A', params: { wide: Infinity, none: NaN, some: 2, word: 'x' } })).toEqual({
    code: 'E1.ok', check: 'E1', severity: 'note', at: 'A', params: { wide: 0, none: 0, some: 2, word: 'x' }, limit: {}, source: 'here', remedy: null,
  });
  expect(ruled(input, 'L1', 'L1', 'ok', 'note', { at: null })).toMatchObject({ params: { pass: 0.01 * FOOT, fail: 0.02 * FOOT }, limit: { pass: 0.01 * FOOT, fail: 0.02 * FOOT } });
  // A fault that is never a stop has no second figure.
  expect(ruled(input, 'L8', 'L8Egress', 'ok', 'note', { at: null })).toMatchObject({ params: { pass: 1.5 * INCH }, limit: { pass: 1.5 * INCH } });
  expect(ruled(input, 'L8', 'L8Egress', 'ok', 'note', { at: null }).limit).not.toHaveProperty('fail');
});

it('a cure comes with a fault, not with a note, and not where nobody asks for it', () => {
  expect([stated('E1', 'noGfci', 'stop', '', { at: null, remedy: cure }).remedy, stated('E1', 'ok', 'note', '', { at: null, remedy: cure }).remedy]).toEqual([cure(), null]);
  expect([ruled(input, 'L1', 'L1', 'open', 'stop', { at: null, remedy: cure }).remedy, ruled(input, 'L1', 'L1', 'ok', 'note', { at: null, remedy: cure }).remedy]).toEqual([cure(), null]);
  expect(ruled({ ...input, withRemedies: false }, 'L1', 'L1', 'open', 'stop', { at: null, remedy: cure }).remedy).toBeNull();
});

it('a verdict without a case is no finding', () => {
  expect(graded(input, 'L1', 'L1', 0, { warn: 'doubtful' }, { at: null })).toEqual([]);
  expect(graded(input, 'L1', 'L1', 1, { fail: 'open' }, { at: null }).map(({ code, severity }) => `${code} ${severity}`)).toEqual(['L1.open stop']);
  expect([isMet(input, 'L1', 0.01 * FOOT), isMet(input, 'L1', 0.011 * FOOT)]).toEqual([true, false]);
});

it('the rounding of a typed size breaks no limit: a millionth, of a large one a millionth part, of a small one no more than a hundredth', () => {
  const least = (pass: number, fail: number, values: readonly number[]) => values.map((value) => judge(value, { sense: 'atLeast', pass, fail }));
  expect(least(1, 0.5, [1 - 9e-7, 1 - 1.1e-6, 0.5 - 9e-7, 0.5 - 1.1e-6])).toEqual(['pass', 'warn', 'warn', 'fail']);
  expect(least(100, 50, [100 - 9e-5, 100 - 1.1e-4])).toEqual(['pass', 'warn']);
  expect(least(1e-5, 0, [0.991e-5, 0.989e-5])).toEqual(['pass', 'warn']);
  expect(least(0, -1, [-9e-7, -1.1e-6])).toEqual(['pass', 'warn']);
  const most = (values: readonly number[]) => values.map((value) => judge(value, { sense: 'atMost', pass: 1, fail: 2 }));
  expect(most([1 + 9e-7, 1 + 1.1e-6, 2 + 9e-7, 2 + 1.1e-6])).toEqual(['pass', 'warn', 'warn', 'fail']);
});

it('of several cures the first that does what is asked', () => {
  const tries = [1, 2, 3].map((value) => remedyOf('remedy.gfci', { value }, [{ path: '/site/lotArea', value }]));
  expect([firstThat(input.document, tries, ({ site }) => site.lotArea! > 1), firstThat(input.document, tries, () => false)]).toEqual([tries[1], null]);
});
