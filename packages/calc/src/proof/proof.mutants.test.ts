import { describe, expect, it } from 'vitest';
import { demoSite } from '../testing/sites.ts';
import { expectProblems } from '../testing/expectProblems.ts';
import { pumpDownCauses } from './causes.ts';
import { commissioningFlow } from './commissioningFlow.ts';
import { MARK_ERROR, PUMP_DOWN_LIMITS, pumpDown, runUncertainty, WATCH_ERROR } from './pumpDown.ts';

const unseen = { rightWithoutLine: null, runsBack: null, inflowWhileOff: null, outletClear: null, voltageShare: null };

describe('proof, corner by corner', () => {
  it('refuses what cannot be measured', () => {
    expectProblems([
      [() => commissioningFlow(demoSite('tern-hollow'), 'M1', NaN), 'value.notFinite at basinLevel'],
      [() => runUncertainty(0, 1), 'value.notPositive at drop'],
      [() => pumpDown([{ volume: 1e308, drop: 1, time: 1e-10, lineEmpty: false }], 1), 'value.notFinite at meanFlow'],
    ]);
  });

  it('judges on the limit itself as good enough', () => {
    const limits = { pass: 0.25, warn: 0.5, uncertainty: 0.05 };
    const verdict = (flow: number) => pumpDown([{ volume: flow * 64, drop: 1, time: 64, lineEmpty: false }], 1, limits).verdict;
    expect([1.25, 0.75, 1.5, 0.5, 1.5001].map(verdict)).toEqual(['pass', 'pass', 'warn', 'warn', 'fail']);
    expect(PUMP_DOWN_LIMITS).toEqual({ pass: 0.1, warn: 0.2, uncertainty: 0.05 });
  });

  it('asks for a bigger drop only above the uncertainty that is allowed', () => {
    const run = { volume: 1, drop: 1e9, time: 20 * WATCH_ERROR, lineEmpty: false };
    const u = runUncertainty(run.drop, run.time);
    expect(u).toBeCloseTo(0.05, 9);
    expect(pumpDown([run], 0.05, { ...PUMP_DOWN_LIMITS, uncertainty: pumpDown([run], 0.05).runUncertainty }).biggerDropNeeded).toBe(false);
    expect(runUncertainty(10 * MARK_ERROR, 1e9)).toBeCloseTo(0.1, 9);
  });

  it('takes a voltage that was not read for none', () => {
    expect(pumpDownCauses(-0.3, 0.1, unseen).lookAt).toContain('voltageShare');
    expect(pumpDownCauses(0, 0, unseen)).toEqual({ causes: [], lookAt: [] });
  });
});
