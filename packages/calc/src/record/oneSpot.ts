import type { BasinStore, RoutingModel } from '../routing/model.ts';
import { restLevel } from '../routing/pumpModes.ts';

/** A basin whose pumps all stand on the mains, start together and lift to free outlets, whose lines do not fill it by themselves, and whose lid does not lie in a low spot. */
function isPlain(basin: BasinStore): boolean {
  return basin.pump !== null && basin.lidTo < 0 && restLevel(basin) === basin.onLevel && basin.units.every(({ battery, startLevel }) => !battery && startLevel === basin.onLevel)
    && basin.lines.every(({ well, returns }) => well < 0 && returns === null);
}

/** True for what SpotRoute can carry: one low spot, at most one plain basin, and nothing in between or behind. */
export function isOneSpot(model: RoutingModel): boolean {
  return model.ponds.length === 1 && model.ponds[0]!.spillsTo < 0 && model.basins.length <= 1 && model.basins.every(isPlain)
    && model.junctions.length === 0 && model.wells.length === 0 && model.conduits.length === 0
    && model.links.every(({ to, returns }) => returns === null && (to === null || to.kind === 'basin'));
}
