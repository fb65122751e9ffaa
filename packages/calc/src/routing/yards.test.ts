/* oxlint-disable max-lines -- the examples of one file of the router, small and many, stand together */
import { describe, expect, it } from 'vitest';
import type { Basin, CatchBasin, DesignDocument, LowSpot, Outlet, Part, Pipe, Pump } from '../document/document.ts';
import { lineEquivalentLength } from '../pump/fittings.ts';
import { weepHoleFlow } from '../pump/weepHole.ts';
import { volumeAtLevel, stageCurve } from '../levels/stageVolume.ts';
import { changed, demoSite, type Changeable } from '../testing/sites.ts';
import { dutyRating, keptShare } from './basinLines.ts';
import { basinSystemVolume, conduitsInto } from './basinVolume.ts';
import { buildBareModel, buildModel, inletsOf, ModelBuilder } from './buildModel.ts';
import { conduitsVolume } from './basinVolume.ts';
import type { RoutingModel } from './model.ts';
import { endOf, partById, partsOf, pathFrom } from './pathParts.ts';
import { dischargePath, dutyAt, pumpLineOf, weepAt } from './pumpLine.ts';
import { frictionRange, variedModel } from './variation.ts';
import { junctionsOf, reach } from './waterways.ts';

type Copy = Changeable<DesignDocument>;
const site = demoSite('tern-hollow');
const of = <K extends Part['kind']>(document: DesignDocument | Copy, kind: K): Changeable<Extract<Part, { readonly kind: K }>> => document.system.parts.find((part) => part.kind === kind) as never;
const withParts = (...parts: object[]): DesignDocument => changed(site, (copy) => { copy.system.parts.push(...(parts as never[])); });
const box: CatchBasin = {
  kind: 'catchBasin', id: 'CB1', name: 'Box', drainsTo: 'P2', lowSpot: 'L1', grateLevel: 30.36, gratePerimeter: 1.2, grateOpenArea: 0.05, clogging: 0.5, invertOut: 30.0, sumpDepth: 0.1,
};
const pipe = (fields: object): Pipe => ({ ...of(site, 'pipe'), ...fields }) as Pipe;
const ids = (parts: readonly { readonly id: string }[]): string[] => parts.map(({ id }) => id);

describe('the way of water through the parts', () => {
  it('goes from each part down to where it ends', () => {
    expect(ids(pathFrom(site, 'CH1'))).toEqual(['CH1', 'P1', 'B1']);
    expect(pathFrom(site, 'gone')).toEqual([]);
    expect([endOf(site, 'CH1')?.id, endOf(site, 'M1')?.id, endOf(site, 'W1'), endOf(site, 'gone')]).toEqual(['B1', 'O1', null, null]);
    expect([partById(site, 'P1')?.id, partById(site, null), partById(site, 'gone')]).toEqual(['P1', undefined, undefined]);
    expect(ids(partsOf(site, 'leader'))).toEqual(['D1', 'D2']);
  });
  it('ends where parts drain in a circle', () => {
    const round = withParts(pipe({ id: 'P8', drainsTo: 'P9' }), pipe({ id: 'P9', drainsTo: 'P8' }));
    expect(pathFrom(round, 'P8').length).toBeLessThan(40);
    expect(endOf(round, 'P8')).toBeNull();
  });
  it('meets others at the head of a pipe or in a box', () => {
    expect(junctionsOf(site)).toEqual([]);
    const joined = withParts(box, pipe({ id: 'P2', drainsTo: 'P1' }));
    // The channel and P2 meet at P1; nothing drains to the box beside its own low spot, and P2 has one feeder.
    expect(ids(junctionsOf(joined))).toEqual(['P1']);
    const fed = withParts(box, pipe({ id: 'P2', drainsTo: 'P1' }), pipe({ id: 'P3', drainsTo: 'CB1' }), { kind: 'swale', id: 'SW1', drainsTo: 'P3' }, { kind: 'pump', id: 'M9', drainsTo: 'P3' });
    // The box lies above P1: upstream ones first. A pump is not among those that meet.
    expect(ids(junctionsOf(fed))).toEqual(['CB1', 'P1']);
    expect(ids(junctionsOf({ ...fed, system: { ...fed.system, parts: [...fed.system.parts].reverse() } }))).toEqual(['CB1', 'P1']);
    const cleanout = withParts({ kind: 'cleanout', id: 'CO1', drainsTo: 'P1' }, pipe({ id: 'P4', drainsTo: 'CO1' }), pipe({ id: 'P5', drainsTo: 'CO1' }));
    expect(ids(junctionsOf(cleanout))).toEqual(['CO1', 'P1']);
    for (const kind of ['gutter', 'leader', 'channel', 'catchBasin', 'pipe', 'cleanout', 'underdrain', 'swale']) {
      expect(ids(junctionsOf(withParts({ kind, id: 'X1', drainsTo: 'P1', lowSpot: 'L1' })))).toEqual(['P1']);
    }
  });
  it('reaches down to the first junction, basin or outlet', () => {
    const joined = withParts(box, pipe({ id: 'P2', drainsTo: 'P1' }));
    const junctions = junctionsOf(joined);
    const told = (id: string, own = false): [string[], string | undefined] => {
      const { parts, end } = reach(joined, id, junctions, own);
      return [ids(parts), end?.id];
    };
    expect([told('CB1'), told('P1'), told('P1', true), told('W1'), told('R1')]).toEqual([[['CB1', 'P2'], 'P1'], [[], 'P1'], [['P1'], 'B1'], [['W1'], undefined], [['R1'], 'O2']]);
    expect(inletsOf(joined).map(({ part, path }) => [part.id, ids(path)])).toEqual([['CH1', ['CH1', 'P1', 'B1']], ['CB1', ['CB1', 'P2', 'P1', 'B1']]]);
  });
});

describe('stores of a yard', () => {
  const model = buildModel(site);

  it('are its low spots, half a meter over rim and last level', () => {
    const [pond] = model.ponds;
    const [spot] = site.site.lowSpots as [LowSpot];
    expect(pond).toMatchObject({ id: 'L1', rimLevel: spot.rimLevel, spillWidth: spot.spillWidth, spillsTo: -1, loss: 0 });
    expect([pond!.storage.bottom, pond!.storage.top]).toEqual([spot.stageArea[0]!.level, expect.closeTo(spot.rimLevel + 0.5, 12)]);
    // 600 cells of a millimeter: at a line of the grid the volume is that of the frustums.
    const at = spot.stageArea[0]!.level + (100 * (spot.rimLevel + 0.5 - spot.stageArea[0]!.level)) / 600;
    expect(pond!.storage.volume(at)).toBeCloseTo(volumeAtLevel(stageCurve(spot.stageArea), at), 9);
    const higher = buildBareModel(changed(site, (copy) => {
      copy.site.lowSpots[0]!.stageArea.push({ level: 31, area: 200 });
      copy.site.lowSpots.push({ ...structuredClone(copy.site.lowSpots[0]!), id: 'L2', spillsTo: 'L1', existingLoss: 2e-4 });
    }));
    expect(higher.ponds[0]!.storage.top).toBeCloseTo(31.5, 12);
    expect(higher.ponds[1]).toMatchObject({ id: 'L2', spillsTo: 0, loss: 2e-4 });
    expect(higher).toMatchObject({ basins: [], junctions: [], wells: [], links: [], conduits: [] });
  });
  it('are its basins with what fills with them, half a meter over the lid', () => {
    const [basin] = model.basins;
    const part = of(site, 'basin') as Basin;
    expect(basin).toMatchObject({ id: 'B1', offLevel: part.offLevel, onLevel: part.onLevel, lidLevel: 30.48, lidEdge: expect.closeTo(Math.PI * 0.762, 9) as number, lidTo: -1 });
    expect([basin!.storage.bottom, basin!.storage.top]).toEqual([part.floorLevel, expect.closeTo(30.98, 12)]);
    const level = part.floorLevel + (300 * (30.98 - part.floorLevel)) / 400;
    expect(basin!.storage.volume(level)).toBeCloseTo(basinSystemVolume(part, conduitsInto(site, 'B1', []), level), 9);
  });
  it('spill through the lid into the lowest of the hollows that drain to them and whose rim is higher', () => {
    const lid = (change: (copy: Copy) => void): number => buildModel(changed(site, change)).basins[0]!.lidTo;
    expect(lid((copy) => { of(copy, 'basin').rimLevel = 30.45; })).toBe(0);
    expect(lid((copy) => { of(copy, 'basin').rimLevel = 30.473904; })).toBe(-1);
    // A deeper hollow that drains elsewhere takes nothing; one that drains there does.
    const deeper = (copy: Copy): void => {
      of(copy, 'basin').rimLevel = 30.45;
      const spot = structuredClone(copy.site.lowSpots[0]!);
      copy.site.lowSpots.push({ ...spot, id: 'L2', stageArea: spot.stageArea.map(({ level, area }) => ({ level: level - 0.1, area })) });
    };
    expect(lid(deeper)).toBe(0);
    // Nor does one whose channel leads off the site.
    expect(lid((copy) => { deeper(copy); copy.system.parts.push({ ...of(copy, 'channel'), id: 'CH2', lowSpot: 'L2', drainsTo: 'O2' } as never); })).toBe(0);
    const draining = (copy: Copy): void => {
      deeper(copy);
      copy.system.parts.push({ ...of(copy, 'channel'), id: 'CH2', lowSpot: 'L2' } as never);
    };
    expect(lid(draining)).toBe(1);
    expect(lid((copy) => { draining(copy); copy.site.lowSpots.reverse(); })).toBe(0);
  });
});

describe('junctions of a yard', () => {
  const joined = withParts(box, pipe({ id: 'P2', drainsTo: 'CB2', invertUp: 30, invertDown: 29.95, length: 3 }), { ...box, id: 'CB2', drainsTo: 'P3', invertOut: 29.9, gratePerimeter: 0.8 }, pipe({ id: 'P3', drainsTo: 'B1', invertUp: 29.9, invertDown: 29.8, length: 5 }));
  const model = buildModel(joined);

  it('are boxes with their own area, and the pipes that fill with them', () => {
    const [junction] = model.junctions;
    expect(model.junctions.map(({ id }) => id)).toEqual(['CB2']);
    expect([junction!.storage.bottom, junction!.storage.top]).toEqual([29.9, expect.closeTo(30.473904 + 0.5, 12)]);
    // A grate of 0.8 m around is 0.2 m square; the pipe into it stands over its floor.
    const level = 29.9 + (60 * (30.973904 - 29.9)) / 120;
    expect(junction!.storage.volume(level)).toBeCloseTo(0.04 * (level - 29.9) + conduitsVolume(conduitsInto(joined, 'CB2', junctionsOf(joined)), level), 9);
    // Over high ground the table goes half a meter over the floor and half a meter more, or over the highest rim.
    const deep = buildModel(changed(joined, (copy) => { for (const part of copy.system.parts) if (part.kind === 'catchBasin' && part.id === 'CB2') { part.invertOut = 33; part.gratePerimeter = 0.1; } }));
    expect(deep.junctions[0]!.storage.top).toBeCloseTo(34, 12);
    expect(deep.junctions[0]!.storage.bottom).toBe(33);
    // No narrower than a 6 in riser, 0.02 m2; what is in its pipes from the start is not counted.
    expect(deep.junctions[0]!.storage.volume(34)).toBeCloseTo(0.02, 9);
  });
  it('have the grate of a box as an inlet of their own, and go on through its pipe', () => {
    expect(model.links.map(({ id, to }) => [id, to])).toEqual([['CH1', { kind: 'basin', index: 0 }], ['CB1', { kind: 'junction', index: 0 }], ['CB2', { kind: 'junction', index: 0 }]]);
    expect(model.conduits).toMatchObject([{ id: 'CB2', junction: 0, entrance: 'box', to: { kind: 'basin', index: 0 }, invertUp: 29.9, invertDown: 29.8, standing: -Infinity }]);
  });
  it('have the floor of the pipe that leads on, or of one that leads in, or the lowest ground', () => {
    const floor = (...parts: object[]): number => buildModel(withParts(...parts)).junctions[0]!.storage.bottom;
    expect(floor(pipe({ id: 'P2', drainsTo: 'P1' }))).toBeCloseTo(30.21965, 12);
    const cleanout = { kind: 'cleanout', id: 'CO1', drainsTo: 'B1' };
    expect(floor(cleanout, pipe({ id: 'P4', drainsTo: 'CO1', invertDown: 29.9 }), pipe({ id: 'P5', drainsTo: 'CO1', invertDown: 29.95 }))).toBe(29.9);
    expect(floor(cleanout, { kind: 'swale', id: 'S4', drainsTo: 'CO1' }, { kind: 'swale', id: 'S5', drainsTo: 'CO1' })).toBeCloseTo(30.364176, 12);
  });
  it('of a joint of pipes hold 0.02 m2', () => {
    const joint = buildModel(withParts(pipe({ id: 'P2', drainsTo: 'P1', invertUp: 31, invertDown: 31 }))).junctions[0]!;
    expect(joint.storage.volume(30.3)).toBeCloseTo(0.02 * (30.3 - 30.21965) + conduitsVolume([of(site, 'channel') as never], 30.3), 3);
  });
});

describe('ends of the ways', () => {
  const well = { area: 4, perimeter: 8, depth: 0.8, voids: 0.4, bottomLevel: 29, infiltrationRate: 2e-5, overflow: true, overflowsTo: 'L1' };
  const gravity = (change: (outlet: Changeable<Outlet>) => void = () => undefined): RoutingModel => buildModel(changed(site, (copy) => {
    copy.system.parts = copy.system.parts.filter(({ id }) => ['CH1', 'P1', 'O1'].includes(id));
    of(copy, 'pipe').drainsTo = 'O1';
    change(of(copy, 'outlet'));
  }));

  it('are outlets, with the water that stands there', () => {
    expect(gravity().links).toMatchObject([{ id: 'CH1', to: null, returns: null, freeLevel: 30.44952 }]);
  });
  it('give a share back to a low spot, none where none is named', () => {
    expect(gravity((outlet) => { outlet.returns = { lowSpot: 'L1', share: 0.3 }; }).links[0]!.returns).toEqual({ pond: 0, share: 0.3 });
    expect(gravity((outlet) => { outlet.returns = { lowSpot: 'L1', share: 0 }; }).links[0]!.returns).toBeNull();
  });
  it('are dry wells', () => {
    const model = gravity((outlet) => { outlet.dryWell = well; outlet.returns = { lowSpot: 'L1', share: 0.3 }; });
    expect(model.links).toMatchObject([{ to: { kind: 'well', index: 0 }, returns: null }]);
    expect(model.wells).toMatchObject([{ id: 'O1', overflowsTo: 0, returns: { pond: 0, share: 0.3 } }]);
    expect(new ModelBuilder(site).end(of(site, 'pipe') as never)).toEqual({ to: null, returns: null, standing: -Infinity });
    expect(new ModelBuilder(site).end(of(site, 'basin') as never)).toEqual({ to: { kind: 'basin', index: 0 }, returns: null, standing: -Infinity });
  });
  it('of a part that leads nowhere are none', () => {
    const lost = changed(site, (copy) => { of(copy, 'pipe').drainsTo = null; });
    expect(buildModel(lost).links).toEqual([]);
  });
});

describe('a pump and what its water passes', () => {
  const pump = of(site, 'pump') as Pump;
  const line = pumpLineOf(site, pump);
  const withLine = (change: (copy: Copy) => void) => pumpLineOf(changed(site, change), pump);

  it('is its basin, its check valve, its line and its outlet', () => {
    expect(ids([line.pump, line.basin, line.line, line.outlet, line.weep!])).toEqual(['M1', 'B1', 'N1', 'O1', 'W1']);
    expect([line.checkValve, line.valve, line.valveLength]).toEqual([true, 'V1', 4.08432]);
    // 34.1376 m, three bends of 4 ft, two of 2.1 ft and the valve.
    expect(line.equivalentLength).toBeCloseTo(34.1376 + 3 * 1.2192 + 2 * 0.64008 + 4.08432, 9);
    expect(line.lineVolume).toBeCloseTo((Math.PI / 4) * 0.040894 ** 2 * 34.1376, 9);
  });
  it('may have no valve, or one that was left out', () => {
    const out = withLine((copy) => { of(copy, 'checkValve').present = false; });
    expect([out.checkValve, out.valve, out.valveLength, out.equivalentLength]).toEqual([false, null, 0, lineEquivalentLength(34.1376, of(site, 'dischargeLine').fittings)]);
    const none = withLine((copy) => { of(copy, 'pump').drainsTo = 'N1'; });
    expect(pumpLineOf(changed(site, (copy) => { of(copy, 'pump').drainsTo = 'N1'; }), { ...pump, drainsTo: 'N1' }).checkValve).toBe(false);
    expect(none.weep?.id).toBe('W1');
    expect(withLine((copy) => { copy.system.parts = copy.system.parts.filter(({ kind }) => kind !== 'weepHole'); }).weep).toBeNull();
  });
  it('lifts to the highest of outlet, the water there and the line', () => {
    expect(line.liftLevel).toBe(30.44952);
    expect(withLine((copy) => { of(copy, 'dischargeLine').highPoint = 31; }).liftLevel).toBe(31);
    expect(withLine((copy) => { Object.assign(copy.system.parts.find(({ id }) => id === 'O1')!, { level: 30.6 }); }).liftLevel).toBe(30.6);
  });
  it('is refused without a line, an outlet or a basin', () => {
    for (const kind of ['dischargeLine', 'outlet', 'basin']) {
      expect(() => withLine((copy) => { copy.system.parts = copy.system.parts.filter((part) => part.kind !== kind); })).toThrow('document.noOutlet');
    }
  });
  it('has the lift, the friction and the opening of as much of its line as is filled', () => {
    const [full, half] = [dischargePath(line, 29.5), dischargePath(line, 29.5, 0.5, 120)];
    expect(full).toEqual({ staticHead: expect.closeTo(0.94952, 12) as number, equivalentLength: line.equivalentLength, innerDiameter: 0.040894, hazenWilliamsC: 150, openingHead: 0.09144 });
    expect(half).toEqual({
      staticHead: expect.closeTo(0.47476, 12) as number, equivalentLength: line.equivalentLength / 2, innerDiameter: 0.040894, hazenWilliamsC: 120, openingHead: 0.04572,
    });
    expect(dutyAt(line, 29.5).flow).toBeGreaterThan(dutyAt(line, 29.4132).flow);
  });
  it('gives back a little by its weep hole', () => {
    expect(weepAt(line, 3)).toBeCloseTo(weepHoleFlow(0.004762, 3), 12);
    expect([weepAt(line, -1), weepAt({ ...line, weep: null }, 3)]).toEqual([0, 0]);
  });
});

describe('pumps of a basin', () => {
  const basinOf = (change: (copy: Copy) => void) => buildModel(changed(site, change)).basins[0]!;
  const standby = (fields: object) => (copy: Copy): void => { copy.system.parts.push({ ...of(copy, 'pump'), id: 'M2', role: 'standby', startLevel: null, ...fields } as never); };

  it('start at the on level, a standby at its own or at the alarm, and none under the off level', () => {
    const starts = (fields: object): number[] => basinOf(standby(fields)).units.map(({ startLevel }) => startLevel);
    expect([starts({}), starts({ startLevel: 29.75 }), starts({ startLevel: 29 })]).toEqual([[29.68752, 29.7942], [29.68752, 29.75], [29.68752, 29.4132 + 0.001]]);
    expect(starts({ role: 'duty', startLevel: 29.75 })).toEqual([29.68752, 29.68752]);
  });
  it('run on the mains, or on a battery with what it holds', () => {
    expect(basinOf(standby({})).units[1]).toMatchObject({ id: 'M2', battery: false, energy: Infinity, inputPower: 0 });
    expect(basinOf(standby({ power: 'battery', energy: 5e6, inputPower: 400 })).units[1]).toMatchObject({ battery: true, energy: 5e6, inputPower: 400 });
    expect(basinOf(standby({ power: 'battery' })).units[1]).toMatchObject({ battery: true, energy: 0, inputPower: 0 });
    expect(basinOf(standby({ energy: 5e6, inputPower: 400 })).units[1]).toMatchObject({ battery: false, energy: Infinity, inputPower: 0 });
  });
  it('share a line, or have lines of their own', () => {
    expect(basinOf(standby({})).lines.map(({ id, units }) => [id, units])).toEqual([['N1', [0, 1]]]);
    const own = (copy: Copy): void => {
      copy.system.parts.push({ ...of(copy, 'dischargeLine'), id: 'N2' } as never);
      standby({ drainsTo: 'N2', role: 'duty' })(copy);
    };
    const two = basinOf(own);
    expect(two.lines.map(({ id, units }) => [id, units])).toEqual([['N1', [0]], ['N2', [1]]]);
    // The first line stays full behind its valve, the second has none and empties.
    const volume = (Math.PI / 4) * 0.040894 ** 2 * 34.1376;
    expect(two.lines.map((line) => [line.volume, line.runBack])).toEqual([[expect.closeTo(volume, 9), 0], [expect.closeTo(volume, 9), expect.closeTo(volume, 9)]]);
    expect(two.pump).toMatchObject({ id: 'M1', lineVolume: expect.closeTo(2 * volume, 9) as number, runBack: expect.closeTo(volume, 9) as number });
    // Both give together what each gives alone.
    const [first, second] = two.lines;
    for (const level of [29.3, 29.8, 30.4]) expect(two.pump!.flow.flow(level)).toBeCloseTo(first!.flow(1).flow(first!.liftLevel - level) + second!.flow(1).flow(second!.liftLevel - level), 5);
    const one = basinOf((copy) => { own(copy); Object.assign(copy.system.parts.find(({ id }) => id === 'M2')!, { role: 'standby' }); });
    expect(one.pump).toMatchObject({ lineVolume: expect.closeTo(volume, 9) as number, runBack: 0 });
    for (const level of [29.3, 30.4]) expect(one.pump!.flow.flow(level)).toBeCloseTo(first!.flow(1).flow(first!.liftLevel - level), 5);
    expect([one.pump!.flow.bottom, one.pump!.flow.top]).toEqual([29.2608, expect.closeTo(30.98, 12)]);
  });
  it('are rated by those on duty alone', () => {
    const alone = basinOf(() => undefined);
    const [line] = alone.lines;
    expect(alone.pump!.id).toBe('M1');
    for (const level of [29.3, 29.8, 30.4]) expect(alone.pump!.flow.flow(level)).toBeCloseTo(line!.flow(1).flow(line!.liftLevel - level), 12);
    const pair = basinOf(standby({ role: 'duty' }));
    expect(pair.pump!.flow.flow(29.5)).toBeCloseTo(pair.lines[0]!.flow(3).flow(pair.lines[0]!.liftLevel - 29.5), 12);
    const second = basinOf((copy) => { of(copy, 'pump').role = 'standby'; standby({ role: 'duty' })(copy); });
    expect(second.pump!.id).toBe('M2');
    expect(second.pump!.flow.flow(29.5)).toBeCloseTo(second.lines[0]!.flow(2).flow(second.lines[0]!.liftLevel - 29.5), 12);
    expect(dutyRating([{ ...of(site, 'pump'), role: 'standby' } as Pump], alone.lines, 31, 29)).toBeNull();
    expect(basinOf((copy) => { copy.system.parts = copy.system.parts.filter(({ kind }) => kind !== 'pump'); })).toMatchObject({ units: [], lines: [], pump: null });
  });
  it('are rated from the floor up to half a meter over the lid, into a dry well up to its top', () => {
    const [line] = basinOf(() => undefined).lines;
    const table = line!.flow(1);
    expect([table.bottom, table.top]).toEqual([expect.closeTo(30.44952 - 30.98, 12), expect.closeTo(30.44952 - 29.2608, 12)]);
    expect(line).toMatchObject({ liftLevel: 30.44952, well: -1, returns: null });
    const well = { area: 4, perimeter: 8, depth: 0.8, voids: 0.4, bottomLevel: 29.6, infiltrationRate: 2e-5, overflow: true, overflowsTo: null };
    const into = basinOf((copy) => { Object.assign(copy.system.parts.find(({ id }) => id === 'O1')!, { dryWell: well, returns: { lowSpot: 'L1', share: 0.5 } }); }).lines[0]!;
    expect([into.well, into.returns]).toEqual([0, null]);
    // Half a meter over its lid at 30.41904, up to the next line of a grid of 2 mm.
    expect(into.flow(1).top).toBeCloseTo(30.92 - 29.2608, 2);
    expect(into.flow(1).top).toBeGreaterThan(30.91904 - 29.2608);
    const back = basinOf((copy) => { Object.assign(copy.system.parts.find(({ id }) => id === 'O1')!, { returns: { lowSpot: 'L1', share: 0.5 } }); }).lines[0]!;
    expect(back.returns).toEqual({ pond: 0, share: 0.5 });
  });
  it('of a line that runs back down to a sag keep what lies beyond it', () => {
    const item = pumpLineOf(site, of(site, 'pump') as Pump);
    const kept = (lowestSag: number | null, liftLevel = 30.4132): number => keptShare({ ...item, liftLevel, line: { ...item.line, lowestSag } });
    // From the off level at 29.4132 a meter up to the lift.
    expect([kept(null), kept(30.1632), kept(29), kept(31), kept(29.2, 29.4132), kept(29.2, 29)]).toEqual([0, 0.25, 1, 0, 0, 0].map((share) => expect.closeTo(share, 9)));
    const open = basinOf((copy) => {
      of(copy, 'checkValve').present = false;
      of(copy, 'dischargeLine').lowestSag = 29.6;
    }).lines[0]!;
    expect(open.runBack / open.volume).toBeCloseTo(1 - (30.44952 - 29.6) / (30.44952 - 29.4132), 9);
    // A valve on one of two is none for the line.
    const half = basinOf(standby({ drainsTo: 'N1' })).lines[0]!;
    expect(half.runBack).toBeCloseTo(half.volume, 9);
    expect(basinOf(standby({})).lines[0]!.runBack).toBe(0);
  });
  it('are twenty of a basin at most', () => {
    const many = basinOf((copy) => { for (let k = 0; k < 25; k += 1) standby({ id: `M${k + 2}` })(copy); });
    expect(many.units).toHaveLength(20);
    const other = basinOf((copy) => { copy.system.parts.push({ ...of(copy, 'basin'), id: 'B2' } as never); standby({ basin: 'B2' })(copy); });
    expect(other.units.map(({ id }) => id)).toEqual(['M1']);
  });
});

describe('a yard that is somewhat other', () => {
  const document = changed(site, (copy) => { copy.site.lowSpots[0]!.existingLoss = 1e-4; });
  const model = buildModel(document);

  it('is the same while nothing is asked', () => {
    const same = variedModel(document, model, {});
    expect(same.links).toBe(model.links);
    expect(same.ponds[0]!.storage.volume(30.42)).toBeCloseTo(model.ponds[0]!.storage.volume(30.42), 12);
    expect(same.ponds[0]!.loss).toBe(1e-4);
    expect(same.basins[0]!.pump!.flow.flow(29.6)).toBeCloseTo(model.basins[0]!.pump!.flow.flow(29.6), 12);
  });
  it('holds more, loses less, pumps less, or takes in less', () => {
    const other = variedModel(document, model, { storage: 1.2, loss: 0.5, pump: 0.9, grate: 0.4 });
    expect(other.ponds[0]!.storage.volume(30.42)).toBeCloseTo(1.2 * model.ponds[0]!.storage.volume(30.42), 12);
    expect(other.ponds[0]!.loss).toBeCloseTo(5e-5, 15);
    expect(other.links[0]!.grateWeir).toBeCloseTo(0.4 * model.links[0]!.grateWeir, 12);
    expect(other.links[0]!.grateOrifice).toBeCloseTo(0.4 * model.links[0]!.grateOrifice, 12);
    expect(other.basins[0]!.pump!.flow.flow(29.6)).toBeCloseTo(0.9 * model.basins[0]!.pump!.flow.flow(29.6), 12);
    expect(other.basins[0]!.lines[0]!.filling(1).flow(1)).toBeCloseTo(0.9 * model.basins[0]!.lines[0]!.filling(1).flow(1), 12);
    expect(variedModel(document, { ...model, basins: [{ ...model.basins[0]!, pump: null }] }, {}).basins[0]!.pump).toBeNull();
  });
  it('has a line between rough and smooth', () => {
    const range = frictionRange(document, model, 100, 150);
    const flow = (friction: number): number => variedModel(document, model, { friction }, range).basins[0]!.lines[0]!.flow(1).flow(1);
    // The document's own coefficient is 150.
    expect(flow(1)).toBeCloseTo(model.basins[0]!.lines[0]!.flow(1).flow(1), 9);
    expect(flow(0.25)).toBeCloseTo(0.75 * flow(0) + 0.25 * flow(1), 12);
    expect(flow(0)).toBeLessThan(flow(1));
    expect(variedModel(document, model, {}, range).basins[0]!.lines[0]!.flow(1).flow(1)).toBe(flow(0));
    const rough = changed(document, (copy) => { of(copy, 'dischargeLine').hazenWilliamsC = 100; });
    expect(flow(0)).toBeCloseTo(buildModel(rough).basins[0]!.lines[0]!.flow(1).flow(1), 9);
  });
  it('is filled from where its line keeps its water', () => {
    const open = changed(site, (copy) => {
      of(copy, 'checkValve').present = false;
      of(copy, 'dischargeLine').lowestSag = 29.6;
    });
    const filled = buildModel(open);
    const range = frictionRange(open, filled, 150, 150);
    expect(range.rough[0]![0]!.filling(1).flow(0.9)).toBeCloseTo(filled.basins[0]!.lines[0]!.filling(1).flow(0.9), 9);
    expect(range.smooth[0]![0]!.runBack).toBe(filled.basins[0]!.lines[0]!.runBack);
    const shut = frictionRange(site, buildModel(site), 150, 150).rough[0]![0]!;
    expect(shut.filling(1).flow(0.9)).toBeCloseTo(buildModel(site).basins[0]!.lines[0]!.filling(1).flow(0.9), 9);
  });
});
