import { describe, expect, it } from 'vitest';
import { FOOT, INCH, MINUTE } from '../common/constants.ts';
import type { DesignDocument, Electrical } from '../document/document.ts';
import type { Finding, Results } from '../results/results.ts';
import { changed, demoSite } from '../testing/sites.ts';
import { electrical, outageChecks, poolBonding } from './electrical.ts';
import type { CheckInput } from './finding.ts';
import { limitsInForce } from './overrides.ts';

const tern = demoSite('tern-hollow');
const sound: Electrical = { ...tern.construction.electrical!, extensionCord: false, gfci: true, receptacleLevel: null, dedicatedCircuit: true };
const input = (fields: Partial<Electrical> | null, more: (copy: Parameters<Parameters<typeof changed>[1]>[0]) => void = () => undefined, results: Partial<Results> = {}): CheckInput => ({
  document: changed(tern, (copy) => {
    copy.construction.electrical = fields === null ? null : { ...sound, ...fields };
    more(copy);
  }), results: results as Results, limits: limitsInForce([]),
});
const of = (asked: CheckInput, check: string): Finding[] => electrical(asked).filter((finding) => finding.check === check);
const patch = (finding: Finding | undefined): unknown => finding?.remedy?.patch;
const set = (field: keyof Electrical | 'burial/depth', value: unknown) => [{ path: `/construction/electrical/${field}`, value }];

describe('the circuit of a pump', () => {
  it('is asked about where there is a pump alone', () => {
    expect(electrical(input(null)).map(({ code, severity }) => [code, severity])).toEqual([['E1.missing', 'stop']]);
    const gravity: DesignDocument = changed(tern, (copy) => { copy.system.parts = copy.system.parts.filter(({ kind }) => kind !== 'pump'); });
    expect(electrical({ ...input({}), document: gravity })).toEqual([]);
    expect(of(input({}), 'E1').map(({ code }) => code)).toEqual(['E1.ok']);
  });
  it('hangs on no cord, has ground-fault protection and shares nothing: each fault with its cure', () => {
    const found = of(input({ extensionCord: true, gfci: false, dedicatedCircuit: false }), 'E1');
    expect(found.map((finding) => [finding.code, finding.severity, patch(finding)])).toEqual([
      ['E1.extensionCord', 'stop', set('extensionCord', false)], ['E1.noGfci', 'stop', set('gfci', true)], ['E1.shared', 'caution', set('dedicatedCircuit', true)],
    ]);
  });
  it('has its receptacle over the highest rim, of low spots and of basins; the cure is a foot over it', () => {
    const at = (receptacleLevel: number, spot: number, basin: number): unknown[] => of(input({ receptacleLevel }, (copy) => {
      copy.site.lowSpots[0]!.rimLevel = spot;
      for (const part of copy.system.parts) if (part.kind === 'basin') part.rimLevel = basin;
    }), 'E1').map((finding) => [finding.code, finding.params, patch(finding)]);
    for (const [spot, basin] of [[30.6, 30.5], [30.5, 30.6]] as const) {
      expect(at(30.59, spot, basin)).toEqual([['E1.floodable', { level: 30.59, flood: 30.6 }, set('receptacleLevel', 30.6 + FOOT)]]);
      expect(at(30.6, spot, basin)).toEqual([['E1.ok', {}, undefined]]);
    }
  });
});

describe('voltage drop', () => {
  /** Ohm's law along both conductors: 2 L I r/V, here 2 x 30 m x 10 A/120 V. */
  const drop = (fields: Partial<Electrical>): Finding => of(input({ runLength: 30, current: 10, voltage: 120, ...fields }), 'E2')[0]!;
  it('passes at 3 % and is large beyond 5 %', () => {
    expect([0.006, 0.0061, 0.01, 0.0101].map((conductorResistance) => drop({ conductorResistance }).code)).toEqual(['E2.ok', 'E2.drop', 'E2.drop', 'E2.dropLarge']);
    expect(drop({ conductorResistance: 0.0061 }).params).toMatchObject({ drop: expect.closeTo(0.0305, 12), length: 30 });
  });
  it('is cured by the first thicker wire that is enough: copper of each gauge by its diameter, 0.127 mm x 92^((36 - n)/39)', () => {
    const resistance = (gauge: number): number => 1.7241e-8 / ((Math.PI / 4) * (0.000127 * 92 ** ((36 - gauge) / 39)) ** 2);
    let thinner = resistance(14);
    for (const gauge of [12, 10, 8, 6, 4]) {
      // As long as this gauge may just be, and a little less.
      const runLength = ((0.03 * 120) / (2 * 10 * resistance(gauge))) * 0.995;
      const found = drop({ runLength, conductorResistance: thinner });
      expect(found.remedy).toMatchObject({ code: 'remedy.thickerWire', params: { gauge: `${String(gauge)} AWG` } });
      expect((patch(found) as { value: number }[])[0]!.value / resistance(gauge)).toBeCloseTo(1, 2);
      thinner = resistance(gauge);
    }
    expect(drop({ runLength: 1000, conductorResistance: 0.0101 }).remedy).toBeNull();
  });
});

describe('cable and alarm', () => {
  it('lies as deep as table 300.5 of the NEC asks: 24, 18 and 12 in', () => {
    for (const [method, inches] of [['direct', 24], ['conduit', 18], ['gfciCable', 12]] as const) {
      const burial = (depth: number): Finding => of(input({ burial: { method, depth: depth * INCH } }), 'E3')[0]!;
      expect([burial(inches).code, burial(inches - 0.1).code, burial(inches - 0.1).severity]).toEqual(['E3.ok', 'E3.shallow', 'stop']);
      expect(patch(burial(1))).toEqual(set('burial/depth', inches * INCH));
      expect(burial(1).params).toMatchObject({ depth: INCH });
    }
    expect(of(input({ burial: null }), 'E3').map(({ code, severity }) => [code, severity])).toEqual([['E3.burial', 'note']]);
  });
  it('does not hang on the circuit of the pump', () => {
    expect((['differentCircuit', 'sameCircuitBattery', 'none'] as const).map((alarm) => of(input({ alarm }), 'E4').map((finding) => [finding.code, finding.severity, patch(finding)])[0])).toEqual([
      ['E4.ok', 'note', undefined], ['E4.sameCircuit', 'caution', set('alarm', 'differentCircuit')], ['E4.missing', 'stop', set('alarm', 'differentCircuit')],
    ]);
  });
  it('is bonded near a pool by an electrician', () => {
    expect([true, false].map((near) => poolBonding(input({}, (copy) => { copy.construction.poolWithin3m = near; })).map(({ code, severity }) => [code, severity]))).toEqual([[['E1.poolBonding', 'caution']], []]);
  });
});

describe('a power cut', () => {
  const cut = (minutes: number, backup: Electrical['backup'] = 'none'): Finding[] =>
    outageChecks(input({ backup }, undefined, { outage: { longestSafe: minutes * MINUTE, returnPeriod: 10 } as Results['outage'] }));
  it('is good from half an hour on, short from ten minutes on, and named when it is far longer than any', () => {
    expect([240, 239, 30, 29, 10, 9].map((minutes) => cut(minutes).map(({ code, severity }) => `${code} ${severity}`))).toEqual([
      ['E5.long note'], ['E5.ok note'], ['E5.ok note'], ['E5.short caution'], ['E5.short caution'], ['E5.tooShort stop'],
    ]);
    expect(cut(9)[0]).toMatchObject({ params: { duration: 9 * MINUTE, returnPeriod: 10 }, remedy: { code: 'remedy.backup', patch: set('backup', 'battery') } });
    expect(outageChecks(input({}, undefined, { outage: null }))).toEqual([]);
  });
  it('is a caution with a backup, which is not offered twice', () => {
    expect([9, 29, 30].map((minutes) => cut(minutes, 'battery').map(({ code, severity, remedy }) => [code, severity, remedy]))).toEqual([[['E5.backed', 'caution', null]], [['E5.backed', 'caution', null]], [['E5.ok', 'note', null]]]);
    const none = { ...input(null, undefined, { outage: { longestSafe: 0, returnPeriod: 10 } as Results['outage'] }) };
    expect(outageChecks(none).map(({ code, remedy }) => [code, remedy])).toEqual([['E5.tooShort', null]]);
  });
});
