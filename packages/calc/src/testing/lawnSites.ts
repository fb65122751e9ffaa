import type { CatchBasin, DesignDocument, Outlet, Underdrain } from '../document/document.ts';
import { FOOT, HOUR, INCH } from '../common/constants.ts';
import { changed, demoSite } from './sites.ts';

/** An invented lawn drained by gravity: one box, one pipe to daylight on the slope below; no concrete, no pump. Taken from the gravity demo site. */
export function gravityLawn(): DesignDocument {
  return changed(demoSite('ridgeback'), (copy) => {
    const pipe = copy.system.parts.find(({ kind }) => kind === 'pipe')!;
    const outlet = copy.system.parts.find((part): part is Outlet => part.kind === 'outlet')!;
    const [spot] = copy.site.lowSpots;
    const box: CatchBasin = {
      kind: 'catchBasin', id: 'CB1', name: 'Lawn inlet', drainsTo: pipe.id, lowSpot: spot!.id, grateLevel: spot!.stageArea[0]!.level - 0.002, gratePerimeter: 1.8,
      grateOpenArea: 0.12, clogging: 0.5, invertOut: 30.2514, sumpDepth: 6 * INCH,
    };
    copy.title = 'Gravity lawn';
    copy.rain.table.illustrative = false;
    copy.site.catchments = [{ ...copy.site.catchments[1]!, area: 120 }];
    copy.site.soil.seasonalHighWaterTable = 28;
    copy.system.parts = [box, pipe, { ...outlet, distanceToLotLine: 4, questions: { ...outlet.questions, rightOfWayPermit: 'yes' } }];
    copy.construction.slabCuts = [];
  });
}

/** The same lawn into a dry well in tested sand, with its overflow off the site. */
export function dryWellLawn(): DesignDocument {
  return changed(gravityLawn(), (copy) => {
    const outlet = copy.system.parts.find(({ kind }) => kind === 'outlet') as Outlet;
    copy.title = 'Dry well lawn';
    copy.site.soil.infiltrationRate = (2 * INCH) / HOUR;
    copy.system.parts = copy.system.parts.map((part) => (part.kind !== 'outlet' ? part : {
      ...outlet, outletKind: 'dryWell', name: 'Dry well',
      dryWell: { area: 4, perimeter: 8, depth: 0.9, voids: 0.4, bottomLevel: 28.69, infiltrationRate: (1 * INCH) / HOUR, overflow: true, overflowsTo: null },
    }));
  });
}

/** The pumped demo site with ground water from an underdrain in its basin. */
export function underdrainedSite(): DesignDocument {
  return changed(demoSite('tern-hollow'), (copy) => {
    const drain: Underdrain = {
      kind: 'underdrain', id: 'U1', name: 'Footing drain', drainsTo: 'B1', diameter: 4 * INCH, length: 20 * FOOT, invertUp: 30.25, invertDown: 30.2, inflowPerLength: 1e-5,
      seepage: null,
    };
    copy.system.parts.push(drain);
  });
}
