import type { CatchBasin, Channel, DesignDocument, LowSpot, Outlet, Pipe, Pump } from '../document/document.ts';
import { changed, demoSite, type Changeable } from './sites.ts';

type Copy = Changeable<DesignDocument>;

const find = <T extends { readonly kind: string }>(copy: Copy, kind: T['kind']): Changeable<T> => copy.system.parts.find((part) => part.kind === kind) as unknown as Changeable<T>;

/** Parts of Tern Hollow's yard drain; its roof is led elsewhere by each site. */
function base(change: (copy: Copy) => void): DesignDocument {
  return changed(demoSite('tern-hollow'), (copy) => {
    const bottom = copy.site.lowSpots[0]!.stageArea[0]!.level;
    copy.rain.storm = { method: 'alternatingBlock', duration: 6 * 3600, block: 300 };
    for (const catchment of copy.site.catchments) {
      catchment.response = 'instantaneous';
      catchment.depressionStorage = 0;
      if (catchment.surface === 'roof') catchment.drainsTo = { kind: 'offSite' };
    }
    copy.system.parts = copy.system.parts.filter(({ kind, id }) => !['gutter', 'leader', 'roofLine'].includes(kind) && id !== 'O2');
    find<Channel>(copy, 'channel').grateLevel = bottom;
    find<Pump>(copy, 'pump').curve = [{ flow: 0, head: 5.5 }, { flow: 0.0032, head: 0 }];
    copy.construction.trenches = [];
    copy.construction.slabCuts = [];
    change(copy);
  });
}

const roofTo = (copy: Copy, kind: 'lowSpot' | 'part', id: string): void => {
  for (const catchment of copy.site.catchments) if (catchment.surface === 'roof') catchment.drainsTo = { kind, id };
};

/** A low spot into a box and a pipe by gravity, in place of channel, basin and pump. */
function gravityOnly(copy: Copy, spot: Changeable<LowSpot>, fall: number): void {
  const bottom = spot.stageArea[0]!.level;
  const pipe = find<Pipe>(copy, 'pipe');
  const outlet = find<Outlet>(copy, 'outlet');
  const box: CatchBasin = {
    kind: 'catchBasin', id: 'CB1', name: 'Box', drainsTo: pipe.id, lowSpot: spot.id, grateLevel: bottom, gratePerimeter: 1.2, grateOpenArea: 0.05, clogging: 0.5,
    invertOut: bottom - 0.35, sumpDepth: 0.15,
  };
  const end = box.invertOut - fall;
  copy.system.parts = [
    box as Changeable<CatchBasin>, { ...pipe, length: 8, invertUp: box.invertOut, invertDown: end, drainsTo: outlet.id },
    { ...outlet, level: end, waterLevel: end + 0.02, openingHead: 0, pit: null },
  ];
}

/** Six yards for the check of the router, each with another way for its water. All are invented. */
export const routedSites: Readonly<Record<string, () => DesignDocument>> = {
  'one low spot and its pump': () => base(() => undefined),
  'two low spots, one spilling into the other': () => base((copy) => {
    const upper = copy.site.lowSpots[0]!;
    const lower = structuredClone(upper);
    lower.id = 'L2';
    lower.stageArea = upper.stageArea.map(({ level, area }) => ({ level: level - 0.25, area }));
    lower.rimLevel = upper.rimLevel - 0.19;
    upper.spillsTo = 'L2';
    copy.site.lowSpots.push(lower);
    roofTo(copy, 'lowSpot', 'L1');
    gravityOnly(copy, lower, 0.08);
    const pipe = find<Pipe>(copy, 'pipe');
    pipe.diameter = 0.0762;
  }),
  'gravity against standing water': () => base((copy) => {
    roofTo(copy, 'lowSpot', 'L1');
    gravityOnly(copy, copy.site.lowSpots[0]!, 0.08);
    find<Outlet>(copy, 'outlet').waterLevel = copy.site.lowSpots[0]!.stageArea[0]!.level - 0.02;
  }),
  'a dry well that fills and runs over': () => base((copy) => {
    const spot = copy.site.lowSpots[0]!;
    gravityOnly(copy, spot, 0.08);
    const outlet = find<Outlet>(copy, 'outlet');
    outlet.dryWell = {
      area: 4, perimeter: 8, depth: 0.8, voids: 0.4, bottomLevel: outlet.level - 0.4, infiltrationRate: 2e-5, overflow: true, overflowsTo: null,
    };
    outlet.level = spot.stageArea[0]!.level - 0.02;
    outlet.waterLevel = outlet.dryWell.bottomLevel;
  }),
  'a duty and a standby pump on one line': () => base((copy) => {
    roofTo(copy, 'lowSpot', 'L1');
    const pump = find<Pump>(copy, 'pump');
    pump.curve = [{ flow: 0, head: 5.5 }, { flow: 0.0022, head: 0 }];
    copy.system.parts.push({ ...structuredClone(pump), id: 'M2', name: 'Standby', role: 'standby', startLevel: null });
  }),
  'a basin that backs up, its line without a check valve': () => base((copy) => {
    roofTo(copy, 'part', 'B1');
    const pump = find<Pump>(copy, 'pump');
    pump.curve = [{ flow: 0, head: 4 }, { flow: 0.0011, head: 0 }];
    for (const part of copy.system.parts) if (part.kind === 'checkValve') part.present = false;
    copy.system.parts = copy.system.parts.filter(({ kind }) => kind !== 'weepHole');
  }),
};
