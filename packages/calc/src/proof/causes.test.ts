import { describe, expect, it } from 'vitest';
import { LEAST_VOLTAGE, pumpDownCauses, type PumpDownSigns } from './causes.ts';

const unseen: PumpDownSigns = { rightWithoutLine: null, runsBack: null, inflowWhileOff: null, outletClear: null, voltageShare: null };
const low = (signs: Partial<PumpDownSigns>): readonly string[] => pumpDownCauses(-0.3, 0.1, { ...unseen, ...signs }).causes;

describe('causes of a pump-down off its prediction', () => {
  it('asks for nothing within the tolerance, and for everything unseen beyond it', () => {
    expect([pumpDownCauses(0.1, 0.1, unseen), pumpDownCauses(-0.1, 0.1, unseen)]).toEqual([{ causes: [], lookAt: [] }, { causes: [], lookAt: [] }]);
    expect(pumpDownCauses(-0.11, 0.1, unseen)).toEqual({ causes: [], lookAt: ['inflowWhileOff', 'runsBack', 'voltageShare', 'outletClear', 'rightWithoutLine'] });
    expect(pumpDownCauses(-0.3, 0.1, { ...unseen, runsBack: false, voltageShare: 0.95 }).lookAt).toEqual(['inflowWhileOff', 'outletClear', 'rightWithoutLine']);
  });
  it('more than predicted is never a better pump', () => {
    expect(pumpDownCauses(0.11, 0.1, { ...unseen, runsBack: true })).toEqual({ causes: ['marksOrStaticHead'], lookAt: [] });
  });
  it('each sign points to its cause', () => {
    expect(low({ inflowWhileOff: true })).toEqual(['inflow']);
    expect(low({ voltageShare: 0.89 })).toEqual(['lowVoltage']);
    expect(low({ voltageShare: LEAST_VOLTAGE })).toEqual([]);
    expect(low({ outletClear: false })).toEqual(['outletBlocked']);
    expect(low({ rightWithoutLine: true })).toEqual(['lineOrOutlet']);
    expect(low({ rightWithoutLine: false })).toEqual(['pumpOrInlet']);
    expect(low({ runsBack: true })).toEqual(['checkValveLeaks']);
    expect(low({ inflowWhileOff: false, runsBack: false, outletClear: true })).toEqual([]);
    expect(low({ inflowWhileOff: true, voltageShare: 0.5, outletClear: false, rightWithoutLine: true, runsBack: true })).toEqual(['inflow', 'lowVoltage', 'outletBlocked', 'lineOrOutlet', 'checkValveLeaks']);
    expect(pumpDownCauses(-0.3, 0.1, { ...unseen, inflowWhileOff: true }).lookAt).toEqual([]);
  });
  it('names what is wrong', () => {
    expect(() => pumpDownCauses(NaN, 0.1, unseen)).toThrow('value.notFinite at deviation');
    expect(() => pumpDownCauses(0, -1, unseen)).toThrow('value.negative at tolerance');
    expect(() => pumpDownCauses(0, 0.1, { ...unseen, voltageShare: -1 })).toThrow('value.negative at voltageShare');
  });
});
