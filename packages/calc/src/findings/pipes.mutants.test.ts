import { describe, expect, it } from 'vitest';
import { FOOT, INCH } from '../common/constants.ts';
import type { Channel, DesignDocument, Pipe } from '../document/document.ts';
import type { ChannelResult, Finding, PipeResult, Results } from '../results/results.ts';
import { changed, demoSite, type Changeable } from '../testing/sites.ts';
import type { CheckInput } from './finding.ts';
import { channelDepth, channelFall, channelSurround, grates, leafLoad } from './inlets.ts';
import { limitsInForce } from './overrides.ts';
import { bends, cleanouts, footings, pipeCapacity, pipeCleansing, pipeCover, pipeFall, pipeMaterial } from './pipes.ts';

const tern = demoSite('tern-hollow');
type Copy = Changeable<DesignDocument>;
const of = <T>(copy: Copy, kind: string): Changeable<T> => copy.system.parts.find((part) => part.kind === kind) as unknown as Changeable<T>;
const said = (found: readonly Finding[], check?: string): string => found.filter((finding) => check === undefined || finding.check === check).map(({ code, severity }) => `${code} ${severity}`).join();
const patch = (finding: Finding | undefined): Record<string, unknown> => Object.fromEntries((finding?.remedy?.patch ?? []).map(({ path, value }) => [path.split('/').slice(4).join('/'), value]));
const pipe = (fields: Partial<Pipe>, result: Partial<PipeResult> = {}, change: (copy: Copy) => void = () => undefined): CheckInput => ({
  document: changed(tern, (copy) => {
    Object.assign(of<Pipe>(copy, 'pipe'), fields);
    change(copy);
  }),
  results: { pipes: [{ part: 'P1', slope: 0.02, share: 0.5, designFlow: 1e-3, fullFlow: 2e-3, fullVelocity: 1, velocity: 0.8, tractiveStress: 2, ...result }] } as unknown as Results, limits: limitsInForce([]),
});

describe('a drain pipe', () => {
  it('G1: falls an eighth of an inch a foot, half of it with a caution where it is four inches wide', () => {
    const fall = (slope: number, diameter = 4): string => said(pipeFall(pipe({ diameter: diameter * INCH }, { slope })));
    expect([1 / 96, 1 / 97, 1 / 192, 1 / 193, 0, -0.001].map((slope) => fall(slope))).toEqual(['G1.ok note', 'G1.small caution', 'G1.small caution', 'G1.tooFlat stop', 'G1.flat stop', 'G1.backFall stop']);
    expect([fall(1 / 97, 3), fall(1 / 96, 3), fall(1 / 193, 3)]).toEqual(['G1.flatSmall stop', 'G1.ok note', 'G1.tooFlat stop']);
  });
  it('G2: runs four fifths full in the design storm, and no more than full', () => {
    expect([0.8, 0.81, 1, 1.01].map((share) => said(pipeCapacity(pipe({}, { share }))))).toEqual(['G2.ok note', 'G2.nearFull caution', 'G2.nearFull caution', 'G2.tooSmall stop']);
  });
  it('G3: cleans itself by 1 Pa or by 2 ft/s, and wears beyond 10', () => {
    const clean = (feet: number, tractiveStress: number): string => said(pipeCleansing(pipe({}, { fullVelocity: feet * FOOT, tractiveStress })));
    expect([clean(1, 1), clean(2, 0.9), clean(1.9, 0.9), clean(10, 5), clean(10.1, 5)]).toEqual(['G3.ok note', 'G3.ok note', 'G3.slow caution', 'G3.ok note', 'G3.fast caution']);
  });
  it('G4: lies a foot deep, six inches where it is strong; a foot under wheels', () => {
    const cover = (inches: number, fields: Partial<Pipe> = {}): string => said(pipeCover(pipe({ coverMin: inches * INCH, ...fields })));
    expect([6, 5.9, 4, 3.9].map((inches) => cover(inches))).toEqual(['G4.ok note', 'G4.shallow caution', 'G4.shallow caution', 'G4.tooShallow stop']);
    for (const fields of [{ joints: 'gasketed' }, { material: 'corrugatedSolid' }] as const) expect([12, 11.9, 6, 5.9].map((inches) => cover(inches, fields))).toEqual(['G4.ok note', 'G4.shallow caution', 'G4.shallow caution', 'G4.tooShallow stop']);
    expect([12, 11.9].map((inches) => cover(inches, { underWheels: true }))).toEqual(['G4.ok note', 'G4.underWheels stop']);
  });
  it('G5: has a cleanout at its head or an inlet there, one at each turn and one every 100 ft', () => {
    const clean = (count: number, feet: number, bends90 = 0, inlet = true): Finding[] => cleanouts(pipe({ cleanouts: count, length: feet * FOOT, bends90 }, {}, (copy) => { if (!inlet) of<Channel>(copy, 'channel').drainsTo = 'elsewhere'; }));
    expect([clean(1, 100), clean(1, 100.1), clean(2, 200), clean(1, 10, 1), clean(2, 10, 1), clean(0, 10), clean(0, 10, 0, false)].map((found) => said(found))).toEqual([
      'G5.ok note', 'G5.few caution', 'G5.ok note', 'G5.few caution', 'G5.ok note', 'G5.few caution', 'G5.deadEnd stop',
    ]);
    expect([patch(clean(1, 250)[0]), patch(clean(0, 10, 0, false)[0])]).toEqual([{ cleanouts: 3 }, { cleanouts: 1 }]);
  });
  it('G6: no trench of ours lies under a footing', () => {
    const dug = (trenchNearFooting: boolean, foundationWithin1ft: boolean, trenches = true): string => said(footings(pipe({}, {}, (copy) => {
      Object.assign(copy.construction, { trenchNearFooting, foundationWithin1ft });
      if (!trenches) copy.construction.trenches = [];
    })));
    expect([dug(false, false), dug(true, false), dug(false, true), dug(false, false, false)]).toEqual(['G6.ok note', 'G6.underFooting refer', 'G6.ok note,G6.termiteZone caution', '']);
  });
  it('G7: turns by long sweeps or by halves', () => {
    const bent = (bends90: number, longSweep = true, bends45 = 1): Finding[] => bends(pipe({ bends90, longSweep, bends45 }));
    expect([bent(0), bent(1), bent(2), bent(1, false)].map((found) => said(found))).toEqual(['G7.ok note', 'G7.sweeps note', 'G7.manySweeps caution', 'G7.hardBend stop']);
    expect([patch(bent(2)[0]), patch(bent(1, false)[0])]).toEqual([{ bends90: 0, bends45: 5 }, { longSweep: true }]);
  });
  it('G8, G9: is smooth, or corrugated with half as much fall again; its joints keep roots out', () => {
    const made = (fields: Partial<Pipe>, slope = 0.02): Finding[] => pipeMaterial(pipe(fields, { slope }));
    expect([made({}), made({ material: 'corrugatedSolid' }, 1.5 / 96), made({ material: 'corrugatedSolid' }, 1.4 / 96), made({ material: 'perforated' })].map((found) => said(found, 'G8'))).toEqual(['G8.ok note', 'G8.corrugated caution', 'G8.corrugatedFlat stop', 'G8.perforated stop']);
    const rooted = (treesNear: boolean): Finding[] => pipeMaterial(pipe({ joints: 'pushFit' }, {}, (copy) => { copy.construction.treesNear = treesNear; }));
    expect([said(made({ joints: 'gasketed' }), 'G9'), said(rooted(false), 'G9'), said(rooted(true), 'G9'), patch(rooted(true)[1])]).toEqual(['G9.ok note', 'G9.loose caution', 'G9.roots stop', { joints: 'gasketed' }]);
  });
});

describe('a channel', () => {
  const channel = (fields: Partial<Channel>, results: Partial<Results> = {}, change: (copy: Copy) => void = () => undefined): CheckInput => ({
    document: changed(tern, (copy) => {
      Object.assign(of<Channel>(copy, 'channel'), fields);
      change(copy);
    }), results: results as Results, limits: limitsInForce([]),
  });
  const [own] = tern.system.parts.filter((part): part is Channel => part.kind === 'channel');
  it('I2, I3, I5: slots of half an inch, five sixteenths where heels walk, a class for its traffic, and locked', () => {
    const grate = (fields: Partial<Channel['grate']>, use: Channel['use'] = 'foot'): Finding[] => grates(channel({ grate: { ...own!.grate, ...fields }, use }));
    expect([5 / 16, 0.32, 0.5, 0.51].map((inches) => said(grate({ slotWidth: inches * INCH }), 'I2'))).toEqual(['I2.ok note', 'I2.heel note', 'I2.heel note', 'I2.wide stop']);
    expect([said(grate({ slotWidth: 0.5 * INCH }, 'car'), 'I2'), patch(grate({ slotWidth: 0.6 * INCH })[0])]).toEqual(['I2.ok note', { 'grate/slotWidth': 0.5 * INCH }]);
    const weak = (loadClass: Channel['grate']['loadClass'], use: Channel['use']): string => said(grate({ loadClass }, use), 'I3');
    expect([weak('foot', 'foot'), weak('foot', 'car'), weak('car', 'foot'), weak('car', 'car')]).toEqual(['I3.ok note', 'I3.weak stop', 'I3.ok note', 'I3.ok note']);
    expect([patch(grate({ loadClass: 'foot' }, 'car')[1]), said(grate({ locked: false }), 'I5'), patch(grate({ locked: false })[2])]).toEqual([{ 'grate/loadClass': 'car' }, 'I5.loose stop', { 'grate/locked': true }]);
  });
  it('C1: runs four fifths full in the design storm, and no more than full', () => {
    const full = (share: number, returnPeriod = tern.rain.designReturnPeriod): string => said(channelDepth(channel({}, { channels: [{ part: 'CH1', share, returnPeriod, flow: 1e-3, depth: 0.05 } as ChannelResult] })));
    expect([full(0.8), full(0.81), full(1), full(1.01), full(2, 9999)]).toEqual(['C1.ok note', 'C1.nearFull caution', 'C1.nearFull caution', 'C1.overflows stop', '']);
  });
  it('C2, C3: its floor falls, is level or falls back a little; it costs two inches, and a foot at most', () => {
    const floor = (fall: number): Finding[] => channelFall(channel({ length: 4, invertUp: 30 + fall, invertDown: 30 }, {}, (copy) => { of<Pipe>(copy, 'pipe').invertUp = 30; }));
    expect([0.01, 0, -0.01, -4 / 96 - 0.001].map((fall) => said(floor(fall), 'C2'))).toEqual(['C2.ok note', 'C2.level note', 'C2.backFall caution', 'C2.backFall stop']);
    expect([2, 2.1, 12, 12.1].map((inches) => said(floor(inches * INCH), 'C3'))).toEqual(['C3.ok note', 'C3.deep caution', 'C3.deep caution', 'C3.tooDeep stop']);
    const step = (over: number): string => said(channelFall(channel({ length: 4, invertUp: 30, invertDown: 30 }, {}, (copy) => { of<Pipe>(copy, 'pipe').invertUp = 30 + over; })), 'C3');
    expect([step(0.00009), step(0.0002)]).toEqual(['C3.ok note', 'C3.ok note,C3.pipeAbove stop']);
  });
  it('C5: stands in four inches of concrete, six under cars', () => {
    const set = (inches: number, use: Channel['use'] = 'foot'): Finding[] => channelSurround(channel({ surround: inches * INCH, use }));
    expect([4, 3.9, 3, 2.9].map((inches) => said(set(inches)))).toEqual(['C5.ok note', 'C5.thin caution', 'C5.thin caution', 'C5.tooThin stop']);
    expect([6, 5.9, 4, 3.9].map((inches) => said(set(inches, 'car')))).toEqual(['C5.ok note', 'C5.thin caution', 'C5.thin caution', 'C5.tooThin stop']);
    expect([patch(set(1)[0]), patch(set(1, 'car')[0])]).toEqual([{ surround: 4 * INCH }, { surround: 6 * INCH }]);
  });
  it('I4: is flushed under trees, and asked about nowhere else', () => {
    const leaves = (treesNear: boolean): string => said(leafLoad(channel({}, {}, (copy) => { copy.construction.treesNear = treesNear; })));
    expect([leaves(true), leaves(false)]).toEqual(['I4.flushChannel note', '']);
  });
});
