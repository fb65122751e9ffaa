import { describe, expect, test, vi } from 'vitest';
import type { DesignDocument, Part } from '../document/document.ts';
import { INCH, MINUTE } from '../common/constants.ts';
import { evaluate } from '../evaluate/evaluate.ts';
import type { Finding } from '../results/results.ts';
import { changed, demoSite, withPart, type Changeable } from '../testing/sites.ts';
import { findingCodes, remedyCodes } from './codes.ts';
import { judge, limits } from './limits.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 240_000 });

const tern = demoSite('tern-hollow');
const ridge = demoSite('ridgeback');
const findingsOf = (document: DesignDocument): readonly Finding[] => evaluate(document, { band: false }).findings;
const part = <K extends Part['kind']>(kind: K) => (id: string, fields: Partial<Extract<Part, { readonly kind: K }>>, document = tern): DesignDocument => {
  expect(document.system.parts.find((item) => item.id === id)?.kind).toBe(kind);
  return withPart<K>(document, id, fields);
};
const site = (change: (copy: Changeable<DesignDocument>) => void) => changed(tern, change);
const basin = part('basin');
const pipe = part('pipe');
const channel = part('channel');
const outlet = part('outlet');
const electrical = (fields: object) => site((copy) => { Object.assign(copy.construction.electrical!, fields); });
const grate = tern.system.parts.find((item) => item.kind === 'channel')!.grate;
const { questions, pit } = tern.system.parts.find((item) => item.kind === 'outlet')!;

/** One case a check: what is changed, and the code and severity that must come of it. */
const cases: readonly [code: string, severity: Finding['severity'], document: () => DesignDocument][] = [
  ['R.postTensionSlab', 'refer', () => site((copy) => { copy.site.observations.push({ id: 'OB1', kind: 'postTensionSlab', note: 'stamp in the garage' }); })],
  ['R.bigCatchment', 'refer', () => site((copy) => { copy.site.catchments[3]!.area = 5000; })],
  ['R.bigFlow', 'refer', () => site((copy) => { copy.site.catchments[0]!.area = 3000; })],
  ['L4.fallMissing', 'stop', () => part('pipe')('P1', { invertUp: 29.7 }, ridge)],
  ['L5.overSill', 'stop', () => site((copy) => { copy.site.catchments[0]!.area = 120; })],
  ['L6.overSill', 'stop', () => site((copy) => { copy.site.catchments[0]!.area = 120; })],
  ['L7.proud', 'stop', () => channel('CH1', { grateLevel: 30.38 })],
  ['L7.lip', 'stop', () => channel('CH1', { grateLevel: 30.35 })],
  ['D1.insideCatchment', 'stop', () => outlet('O1', { insideCatchment: true })],
  ['D1.groundFallsBack', 'stop', () => outlet('O1', { groundFallsAway: -0.02 })],
  ['D2.overflows', 'stop', () => part('gutter')('G1', { width: 0.08, depth: 0.05 })],
  ['D2.tight', 'caution', () => part('leader')('D1', { diameter: 0.0575 })],
  ['D2.lineSpills', 'stop', () => part('roofLine')('R1', { diameter: 0.0508, unsealedJointLevel: 30.6 })],
  ['I1.short', 'stop', () => channel('CH1', { grate: { ...grate, clogging: 0.02 } })],
  ['I2.wide', 'stop', () => channel('CH1', { grate: { ...grate, slotWidth: 0.02 } })],
  ['I3.weak', 'stop', () => channel('CH1', { use: 'car' })],
  ['I5.loose', 'stop', () => channel('CH1', { grate: { ...grate, locked: false } })],
  ['C1.overflows', 'stop', () => channel('CH1', { depth: 0.1 })],
  ['C2.backFall', 'stop', () => channel('CH1', { invertUp: 30.1 })],
  ['C3.pipeAbove', 'stop', () => channel('CH1', { invertUp: 30.2, invertDown: 30.2 })],
  ['C4.short', 'stop', () => channel('CH1', { outletDiameter: 0.05 })],
  ['C5.thin', 'stop', () => channel('CH1', { surround: 0.05 })],
  ['G1.tooFlat', 'stop', () => pipe('P1', { invertDown: 30.215 })],
  ['G1.small', 'caution', () => pipe('P1', { invertDown: 30.19 })],
  ['G2.tooSmall', 'stop', () => pipe('P1', { diameter: 0.0762 })],
  ['G3.slow', 'caution', () => pipe('P1', { invertDown: 30.215, roughness: 0.02, diameter: 0.3 })],
  ['G4.tooShallow', 'stop', () => pipe('P1', { coverMin: 0.05 })],
  ['G4.underWheels', 'stop', () => pipe('P1', { underWheels: true })],
  ['G5.few', 'caution', () => pipe('P1', { cleanouts: 0 })],
  ['G6.underFooting', 'refer', () => site((copy) => { copy.construction.trenchNearFooting = true; })],
  ['G7.hardBend', 'stop', () => pipe('P1', { bends90: 1, longSweep: false })],
  ['G8.perforated', 'stop', () => pipe('P1', { material: 'perforated' })],
  ['G9.loose', 'stop', () => pipe('P1', { joints: 'pushFit' })],
  ['B1.tooManyStarts', 'stop', () => basin('B1', { diameter: 18 * INCH })],
  ['B2.shortRun', 'caution', () => basin('B1', { diameter: 24 * INCH })],
  ['B3.sucksAir', 'stop', () => basin('B1', { offLevel: 29.3 })],
  ['B4.aboveInlet', 'stop', () => basin('B1', { onLevel: 30.2, alarmLevel: 30.25 })],
  ['B5.aboveInlet', 'stop', () => basin('B1', { alarmLevel: 30.3 })],
  ['B6.touches', 'stop', () => basin('B1', { floatClearance: 0 })],
  ['B7.floatsAtGrade', 'stop', () => basin('B1', { collarVolume: 0.18 })],
  ['B7.floatsAtWaterTable', 'stop', () => basin('B1', { collarVolume: 0 })],
  ['B8.perforatedWet', 'stop', () => basin('B1', { wall: 'perforated' })],
  ['B9.loose', 'stop', () => basin('B1', { lidFixed: false })],
  ['B10.siltRoomSmall', 'caution', () => basin('B1', { offLevel: 29.3 })],
  ['P1.noFlow', 'stop', () => outlet('O1', { waterLevel: 36, level: 36 })],
  ['P4.tooFast', 'stop', () => part('dischargeLine')('N1', { innerDiameter: 0.027, length: 3, fittings: [] })],
  ['P4.slow', 'stop', () => part('dischargeLine')('N1', { innerDiameter: 0.08 })],
  ['P5.tooHigh', 'stop', () => outlet('O1', { waterLevel: 34.1 })],
  ['P6.smallerThanSlot', 'stop', () => part('pump')('M1', { solids: 0.005 })],
  ['P7.tetherInSmallBasin', 'stop', () => basin('B1', { diameter: 0.4, floatKind: 'tether' })],
  ['N1.runBack', 'caution', () => part('checkValve')('V1', { present: false })],
  ['N2.tooLarge', 'stop', () => part('weepHole')('W1', { diameter: 0.01 })],
  ['N3.small', 'caution', () => outlet('O1', { pit: { ...pit!, area: 0.2 } })],
  ['N4.nearFoundation', 'stop', () => outlet('O1', { distanceToFoundation: 1 })],
  ['N5.inWaterTable', 'stop', () => outlet('O1', { pit: { ...pit!, bottomLevel: 29 } })],
  ['N6.tooSlow', 'stop', () => site((copy) => { copy.site.soil.infiltrationRate = 4e-7; })],
  ['E1.extensionCord', 'stop', () => electrical({ extensionCord: true })],
  ['E2.dropLarge', 'stop', () => electrical({ runLength: 90 })],
  ['E4.missing', 'stop', () => electrical({ alarm: 'none' })],
  ['E5.tooShort', 'stop', () => site((copy) => { copy.site.lowSpots[0]!.stageArea.forEach((stage) => { stage.area *= 0.25; }); })],
  ['O4.no', 'stop', () => outlet('O1', { questions: { ...questions, notSanitarySewer: 'no' } })],
  ['O10.unknown', 'caution', () => outlet('O1', { questions: { ...questions, noEasementConflict: 'unknown' } })],
];

const plain = findingsOf(tern);
const made = new Map<string, readonly Finding[]>();
function caseFindings(code: string, document: () => DesignDocument): readonly Finding[] {
  const known = made.get(code) ?? findingsOf(document());
  made.set(code, known);
  return known;
}

describe('findings', () => {
  test.each(cases)('%s comes as %s', (code, severity, document) => {
    expect(plain.find((finding) => finding.code === code && finding.severity === severity)).toBeUndefined();
    const found = caseFindings(code, document).find((finding) => finding.code === code);
    expect(found?.severity).toBe(severity);
    expect(found!.source).not.toBe('');
    expect(found!.code.startsWith(`${found!.check}.`)).toBe(true);
  });

  test('every code given is in the list of codes, and every remedy too', () => {
    const all = [plain, findingsOf(ridge), findingsOf(demoSite('sallow-bend')), ...cases.map(([code, , document]) => caseFindings(code, document))].flat();
    expect([...new Set(all.map(({ code }) => code))].filter((code) => !(findingCodes as readonly string[]).includes(code))).toEqual([]);
    expect(all.flatMap(({ remedy }) => remedy?.code ?? []).filter((code) => !(remedyCodes as readonly string[]).includes(code))).toEqual([]);
  });

  test.each([
    ['G1.tooFlat', () => pipe('P1', { invertDown: 30.215 })], ['G2.tooSmall', () => pipe('P1', { diameter: 0.0762 })], ['B7.floatsAtGrade', () => basin('B1', { collarVolume: 0.18 })],
    ['B5.aboveInlet', () => basin('B1', { alarmLevel: 30.3 })], ['C2.backFall', () => channel('CH1', { invertUp: 30.1 })], ['N3.small', () => outlet('O1', { pit: { ...pit!, area: 0.2 } })],
    ['E4.missing', () => electrical({ alarm: 'none' })],
  ] as const)('the remedy of %s cures it', (code, make) => {
    const document = make();
    const { remedy } = findingsOf(document).find((finding) => finding.code === code)!;
    const cured = changed(document, (copy) => {
      for (const { path, value } of remedy!.patch) {
        const keys = path.slice(1).split('/');
        let holder = copy as unknown as Record<string, unknown>;
        for (const key of keys.slice(0, -1)) holder = holder[key] as Record<string, unknown>;
        holder[keys[keys.length - 1]!] = value;
      }
    });
    expect(findingsOf(cured).map((finding) => finding.code)).not.toContain(code);
  });

  test('limits are judged at, within and beyond', () => {
    expect([1, 0.75, 0.5, 0.4].map((value) => judge(value * INCH, limits.L5))).toEqual(['pass', 'warn', 'warn', 'fail']);
    expect([15, 20, 30, 31].map((value) => judge(value, limits.B1))).toEqual(['pass', 'warn', 'warn', 'fail']);
    expect([30, 10, 9].map((value) => judge(value * MINUTE, limits.E5))).toEqual(['pass', 'warn', 'fail']);
  });
});
