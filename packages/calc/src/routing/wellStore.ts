import type { Outlet } from '../document/document.ts';
import { LevelTable } from './levelTable.ts';
import type { Returns, WellStore } from './model.ts';

/** Plan area of the riser between the stone and the lid [m2], and the edge over which a full store runs over [m]. Source: ours, a 10 in riser and a lid of a foot. */
const riserArea = 0.05;
const crestEdge = 1;
const stoneCells = 400;
const aboveCrest = 0.5;

/** A dry well or trench as a store: stone up to its top, a riser above, and a crest where it runs over: the lid, when that is higher. */
export function wellStore(outlet: Outlet, overflowsTo: number, returns: Returns | null): WellStore {
  const well = outlet.dryWell!;
  const topLevel = well.bottomLevel + well.depth;
  const crestLevel = Math.max(topLevel, outlet.level);
  // The grid has a line at the top of the stone.
  const cell = well.depth / stoneCells;
  const cells = stoneCells + Math.floor(Math.min(20 * stoneCells, (crestLevel + aboveCrest - topLevel) / cell)) + 1;
  const area = well.voids * well.area;
  return {
    id: outlet.id, area: well.area, perimeter: well.perimeter, topLevel, rate: well.infiltrationRate, crestLevel, crestEdge, overflowsTo, returns,
    storage: LevelTable.tabulate(well.bottomLevel, well.bottomLevel + cells * cell, cells, (level) =>
      (level <= topLevel ? area * (level - well.bottomLevel) : area * well.depth + Math.min(area, riserArea) * (level - topLevel))),
  };
}
