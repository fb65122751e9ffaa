import type { Basin, CatchBasin, Channel, DesignDocument, LowSpot, Pipe, Pump } from '../document/document.ts';
import { channelVolume, pipeVolume } from './conduitStorage.ts';
import { LevelTable } from './levelTable.ts';
import { linkOf, sharedBy, type Inlet } from './linkOf.ts';
import type { BasinStore, Link, PondStore, PumpRating, RoutingModel } from './model.ts';
import { partsOf, pathFrom } from './pathParts.ts';
import { lowestPoint } from './pondStorage.ts';
import { stageCurve, volumeAtLevel } from '../levels/stageVolume.ts';
import { PI } from '../math/constants.ts';

/** Tables reach this far above the rim [m]; levels beyond it run on with the last area. */
const aboveRim = 0.5;
const pondCells = 600;
const basinCells = 400;

export function pondStore(spot: LowSpot): PondStore {
  const bottom = lowestPoint(spot);
  const stages = spot.stageArea;
  const curve = stageCurve(stages);
  const top = Math.max(spot.rimLevel, stages[stages.length - 1]!.level) + aboveRim;
  return {
    id: spot.id, rimLevel: spot.rimLevel, spillWidth: spot.spillWidth, loss: spot.existingLoss,
    storage: LevelTable.tabulate(bottom, top, pondCells, (level) => volumeAtLevel(curve, level)),
  };
}

/** Channels and catch basins with the path that their water takes. */
export function inletsOf(document: DesignDocument): Inlet[] {
  const inlets: (Channel | CatchBasin)[] = [...partsOf(document, 'channel'), ...partsOf(document, 'catchBasin')];
  return inlets.map((part) => ({ part, path: pathFrom(document, part.id) }));
}

/** Volume of a basin below a level, with the pipes and channels that drain to it and fill with it [m3]. */
export function basinSystemVolume(document: DesignDocument, basin: Basin, level: number): number {
  const area = 0.25 * PI * basin.diameter * basin.diameter;
  let volume = area * Math.max(0, level - basin.floorLevel);
  for (const part of document.system.parts) {
    if (part.kind !== 'pipe' && part.kind !== 'channel') continue;
    if (!pathFrom(document, part.id).some((item) => item.id === basin.id)) continue;
    volume += part.kind === 'pipe' ? pipeVolume(part as Pipe, level) : channelVolume(part, level);
  }
  return volume;
}

function basinStore(document: DesignDocument, basin: Basin, rate: RatePump): BasinStore {
  const duty = partsOf(document, 'pump').filter((pump) => pump.basin === basin.id && pump.role === 'duty');
  const top = basin.rimLevel + aboveRim;
  return {
    id: basin.id, offLevel: basin.offLevel, onLevel: basin.onLevel, lidLevel: basin.rimLevel, lidEdge: PI * basin.diameter,
    storage: LevelTable.tabulate(basin.floorLevel, top, basinCells, (level) => basinSystemVolume(document, basin, level)),
    pump: duty.length === 0 ? null : rate(duty, basin, top),
  };
}

/** Rates the duty pumps of a basin on their lines up to a level. */
export type RatePump = (pumps: readonly Pump[], basin: Basin, top: number) => PumpRating;

/** The whole system as stores and links. */
export function buildModel(document: DesignDocument, rate: RatePump): RoutingModel {
  const basins = partsOf(document, 'basin');
  const inlets = inletsOf(document);
  const shared = sharedBy(inlets);
  const links: Link[] = [];
  for (const inlet of inlets) {
    const pond = document.site.lowSpots.findIndex((spot) => spot.id === inlet.part.lowSpot);
    const end = inlet.path.find((part) => part.kind === 'basin' || part.kind === 'outlet');
    if (end === undefined) continue;
    const basin = end.kind === 'basin' ? basins.findIndex((item) => item.id === end.id) : -1;
    links.push(linkOf(document, inlet, pond, basin, end.kind === 'outlet' ? end.waterLevel : null, shared));
  }
  return { ponds: document.site.lowSpots.map(pondStore), basins: basins.map((basin) => basinStore(document, basin, rate)), links };
}

/** The site as it is, without any part of the system. */
export function buildBareModel(document: DesignDocument): RoutingModel {
  return { ponds: document.site.lowSpots.map(pondStore), basins: [], links: [] };
}
