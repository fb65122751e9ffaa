import { describe, expect, it } from 'vitest';
import type { Basin, CatchBasin, Channel, DesignDocument, Outlet, Part, Pipe } from '../document/document.ts';
import { changed, demoSite, type Changeable } from '../testing/sites.ts';
import { basinSystemVolume, basinVolume, conduitsInto, conduitsVolume } from './basinVolume.ts';
import { channelVolume, pipeVolume } from './conduitStorage.ts';
import { lowestPoint } from './pondStorage.ts';
import { junctionsOf } from './waterways.ts';
import { wellStore } from './wellStore.ts';

const site = demoSite('tern-hollow');
const partOf = <K extends Part['kind']>(kind: K): Extract<Part, { readonly kind: K }> => site.system.parts.find((part) => part.kind === kind) as Extract<Part, { readonly kind: K }>;

describe('water in a pipe', () => {
  // 8 m of 100 mm, level: geometry of the circle, Chow 1959 table 2-1: half full 0.3927 D^2, 0.2 D deep 0.1118 D^2.
  const pipe: Pipe = { ...partOf('pipe'), length: 8, diameter: 0.1, invertUp: 2, invertDown: 2 };
  const full = 8 * Math.PI * 0.0025;

  it('follows the circle', () => {
    expect(pipeVolume(pipe, 2.05)).toBeCloseTo(full / 2, 12);
    expect(Math.abs(pipeVolume(pipe, 2.02) - 8 * 0.01 * 0.1118)).toBeLessThan(8 * 0.01 * 1e-4);
    expect(Math.abs(pipeVolume(pipe, 2.071) - 8 * 0.01 * 0.5964)).toBeLessThan(8 * 0.01 * 1e-4);
    expect(pipeVolume(pipe, 2.1)).toBeCloseTo(full, 12);
    // A millimeter under the crown: theta = 2 acos(1 - 2 * 0.99).
    const theta = 2 * Math.acos(-0.98);
    expect(Math.abs(pipeVolume(pipe, 2.099) - 0.01 * (theta - Math.sin(theta)))).toBeLessThan(1e-3 * full);
    expect([pipeVolume(pipe, 2), pipeVolume(pipe, 1)]).toEqual([0, 0]);
    expect(pipeVolume(pipe, 3)).toBeCloseTo(full, 12);
  });
  it('is that of every section along a fall', () => {
    // The surface stands at the middle of the fall: what is missing above its crown on one side is there on the other.
    const falling = { ...pipe, invertUp: 2.3, invertDown: 1.7 };
    expect(pipeVolume(falling, 2.05)).toBeCloseTo(full / 2, 4);
    // A twentieth of the fall is under water, as a wedge: less than the full length of it.
    const steep = { ...pipe, invertUp: 4, invertDown: 2 };
    expect(pipeVolume(steep, 2.25)).toBeCloseTo(full * 0.1, 3);
    expect(pipeVolume(steep, 4.1)).toBeCloseTo(full, 12);
    expect(pipeVolume(steep, 4.0)).toBeLessThan(full);
  });
});

describe('water in a channel', () => {
  const channel: Channel = { ...partOf('channel'), length: 5, width: 0.2, bottomWidth: 0.1, depth: 0.15, invertUp: 1, invertDown: 1, shape: 'rectangular' };

  it('is its section times its length, up to its inner depth', () => {
    expect(channelVolume(channel, 1.06)).toBeCloseTo(5 * 0.2 * 0.06, 12);
    expect(channelVolume(channel, 1.4)).toBeCloseTo(5 * 0.2 * 0.15, 12);
    expect(channelVolume(channel, 0.9)).toBe(0);
  });
  it('has the mean width of a trapezoid, or that of a half circle', () => {
    expect(channelVolume({ ...channel, shape: 'trapezoidal' }, 1.06)).toBeCloseTo(5 * 0.15 * 0.06, 12);
    expect(channelVolume({ ...channel, shape: 'roundBottomed' }, 1.06)).toBeCloseTo(5 * 0.2 * (Math.PI / 4) * 0.06, 12);
  });
  it('is a wedge along a fall', () => {
    // The surface is level with the upper end: half of the depth of the fall on average.
    expect(channelVolume({ ...channel, invertUp: 1.1 }, 1.1)).toBeCloseTo(5 * 0.2 * 0.05, 12);
  });
});

describe('water in a basin', () => {
  const basin: Basin = { ...partOf('basin'), diameter: 0.6, floorLevel: 2, marks: [] };
  const marked = (...marks: Basin['marks'][number][]): Basin => ({ ...basin, marks });

  it('is a cylinder without marks', () => {
    expect(basinVolume(basin, 2.5)).toBeCloseTo(Math.PI * 0.09 * 0.5, 12);
    expect([basinVolume(basin, 2), basinVolume(basin, 1)]).toEqual([0, 0]);
    expect(basinVolume(marked({ level: 2.4, volume: 9 }), 2.5)).toBeCloseTo(Math.PI * 0.09 * 0.5, 12);
  });
  it('runs straight between marks, from the floor to the first and on above the last', () => {
    const measured = marked({ level: 2.1, volume: 0.02 }, { level: 2.3, volume: 0.1 }, { level: 2.4, volume: 0.12 });
    expect([2, 2.05, 2.1, 2.25, 2.3, 2.38, 2.5].map((level) => basinVolume(measured, level)))
      .toEqual([0, 0.01, 0.02, 0.08, 0.1, 0.116, 0.14].map((value) => expect.closeTo(value, 12)));
  });
  it('begins at the first mark where that is the floor, and is never less than nothing', () => {
    const onFloor = marked({ level: 2, volume: 0.01 }, { level: 2.2, volume: 0.05 });
    expect(basinVolume(onFloor, 2.1)).toBeCloseTo(0.03, 12);
    expect(basinVolume(marked({ level: 1.8, volume: -0.3 }, { level: 2.4, volume: 0.06 }), 2.1)).toBe(0);
  });
});

describe('pipes and channels that fill with a store', () => {
  it('are those whose water comes to it before any other', () => {
    const basin = partOf('basin');
    const into = conduitsInto(site, basin.id, junctionsOf(site));
    expect(into.map(({ kind }) => kind).sort()).toEqual(['channel', 'pipe']);
    expect(conduitsInto(site, 'O1', junctionsOf(site)).map(({ kind }) => kind)).toEqual([]);
    // A pipe at whose head two others meet fills from the store behind it all the same.
    const pipe = into.find(({ kind }) => kind === 'pipe')!;
    expect(conduitsInto(site, basin.id, [pipe]).map(({ kind }) => kind)).toEqual(['pipe']);
    const level = partOf('channel').grateLevel;
    expect(conduitsVolume(into, level)).toBeCloseTo(pipeVolume(partOf('pipe'), level) + channelVolume(partOf('channel'), level), 12);
    expect(conduitsVolume([basin], level)).toBe(0);
    expect(basinSystemVolume(basin, into, level)).toBeCloseTo(basinVolume(basin, level) + conduitsVolume(into, level), 12);
  });
  it('end at a junction', () => {
    const box: CatchBasin = {
      kind: 'catchBasin', id: 'CB1', name: 'Box', drainsTo: 'B1', lowSpot: 'L1', grateLevel: 30, gratePerimeter: 1, grateOpenArea: 0.05, clogging: 0.5, invertOut: 29.6, sumpDepth: 0.1,
    };
    const joined = changed(site, (copy) => {
      const pipe = copy.system.parts.find(({ kind }) => kind === 'pipe')!;
      pipe.drainsTo = 'CB1';
      copy.system.parts.push(box as Changeable<CatchBasin>);
    });
    const junctions = junctionsOf(joined);
    expect(junctions.map(({ id }) => id)).toEqual(['CB1']);
    expect(conduitsInto(joined, 'CB1', junctions)).toHaveLength(2);
    expect(conduitsInto(joined, partOf('basin').id, junctions)).toEqual([]);
  });
});

describe('a dry well as a store', () => {
  const well = { area: 4, perimeter: 8, depth: 0.8, voids: 0.4, bottomLevel: 27, infiltrationRate: 2e-5, overflow: true, overflowsTo: null };
  const outlet = (level: number, fields: Partial<typeof well> = {}): Outlet => ({ ...partOf('outlet'), id: 'O9', level, dryWell: { ...well, ...fields } });

  it('holds the voids of its stone, and a riser of 0.05 m2 above', () => {
    const store = wellStore(outlet(28.5007), 2, { pond: 1, share: 0.5 });
    expect(store).toMatchObject({ id: 'O9', area: 4, perimeter: 8, rate: 2e-5, crestLevel: 28.5007, crestEdge: 1, overflowsTo: 2, returns: { pond: 1, share: 0.5 } });
    expect(store.topLevel).toBeCloseTo(27.8, 12);
    expect([27, 27.4, 27.8, 28.5].map((level) => store.storage.volume(level))).toEqual([0, 0.64, 1.28, 1.315].map((value) => expect.closeTo(value, 9)));
    // Its table goes on half a meter over the crest, up to the next line of a grid of 2 mm.
    expect(store.storage.bottom).toBe(27);
    expect(store.storage.top).toBeCloseTo(29.002, 9);
  });
  it('runs over at the top of its stone where its lid lies lower', () => {
    expect(wellStore(outlet(27.1), -1, null).crestLevel).toBeCloseTo(27.8, 12);
  });
  it('has a riser no wider than its voids', () => {
    const narrow = wellStore(outlet(28.5, { area: 0.1 }), -1, null);
    expect(narrow.storage.volume(28.3) - narrow.storage.volume(27.8)).toBeCloseTo(0.5 * 0.04, 9);
  });
  it('keeps its grid within bounds where its lid is far above thin stone', () => {
    const deep = wellStore(outlet(40, { depth: 0.1 }), -1, null);
    // 400 cells of stone and 20 times as many above, and one.
    expect(deep.storage.top).toBeCloseTo(27 + (8401 * 0.1) / 400, 9);
    expect(deep.storage.volume(40)).toBeCloseTo(0.16 + 0.05 * 12.9, 6);
  });
});

describe('the lowest point of a low spot', () => {
  it('is its first level', () => {
    const spot: DesignDocument['site']['lowSpots'][number] = { ...site.site.lowSpots[0]!, stageArea: [{ level: 3, area: 0 }, { level: 4, area: 8 }] };
    expect(lowestPoint(spot)).toBe(3);
  });
});
