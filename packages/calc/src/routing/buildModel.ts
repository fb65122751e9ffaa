import type { Basin, DesignDocument, LowSpot, Outlet, Part } from '../document/document.ts';
import { stageCurve, volumeAtLevel } from '../levels/stageVolume.ts';
import { PI } from '../math/constants.ts';
import { basinPumps, type BasinPumps, type LineContext } from './basinLines.ts';
import { basinSystemVolume, conduitsInto, conduitsVolume } from './basinVolume.ts';
import { LevelTable } from './levelTable.ts';
import { conduitOf, linkOf, type LinkEnd } from './linkOf.ts';
import type { BasinStore, Conduit, JunctionStore, Link, PondStore, Returns, RoutingModel, WellStore } from './model.ts';
import { partsOf } from './pathParts.ts';
import { lowestPoint } from './pondStorage.ts';
import { inletsOf, junctionsOf, reach, type PathEnd } from './waterways.ts';
import { wellStore } from './wellStore.ts';

export { inletsOf } from './waterways.ts';

/** Tables reach this far above the rim [m]; levels beyond it run on with the last area. */
const aboveRim = 0.5;
const pondCells = 600;
const basinCells = 400;
const junctionCells = 120;
/** Plan area of a joint of pipes, and of the riser above a junction [m2]. Source: ours, a 6 in cleanout. */
const jointArea = 0.02;

const spotIndex = (document: DesignDocument, id: string | null): number => document.site.lowSpots.findIndex((spot) => spot.id === id);

function pondStore(document: DesignDocument, spot: LowSpot): PondStore {
  const bottom = lowestPoint(spot);
  const stages = spot.stageArea;
  const curve = stageCurve(stages);
  const top = Math.max(spot.rimLevel, stages[stages.length - 1]!.level) + aboveRim;
  return {
    id: spot.id, rimLevel: spot.rimLevel, spillWidth: spot.spillWidth, spillsTo: spotIndex(document, spot.spillsTo), loss: spot.existingLoss,
    storage: LevelTable.tabulate(bottom, top, pondCells, (level) => volumeAtLevel(curve, level)),
  };
}

/**
 * Low spot that takes what a basin spills: the lowest of those that drain to it and whose rim is above the lid, so that the lid
 * lies in its hollow; -1 when the lid stands above all of them and its water runs off the site. Source: ours
 */
function lidTarget(document: DesignDocument, basin: Basin): number {
  const inlets = inletsOf(document).filter(({ path }) => path.some(({ id }) => id === basin.id));
  const inside = document.site.lowSpots.filter((spot) => spot.rimLevel > basin.rimLevel && inlets.some(({ part }) => part.lowSpot === spot.id));
  const lowest = inside.reduce<LowSpot | null>((low, spot) => (low === null || lowestPoint(spot) < lowestPoint(low) ? spot : low), null);
  return lowest === null ? -1 : spotIndex(document, lowest.id);
}

/** A basin without what it holds and what pumps it out. */
function basinFrame(document: DesignDocument, basin: Basin): Omit<BasinStore, 'storage' | keyof BasinPumps> {
  return {
    id: basin.id, offLevel: basin.offLevel, onLevel: basin.onLevel, lidLevel: basin.rimLevel, lidEdge: PI * basin.diameter, lidTo: lidTarget(document, basin),
  };
}

function basinStorage(document: DesignDocument, basin: Basin, junctions: readonly Part[]): LevelTable {
  const conduits = conduitsInto(document, basin.id, junctions);
  return LevelTable.tabulate(basin.floorLevel, basin.rimLevel + aboveRim, basinCells, (level) => basinSystemVolume(basin, conduits, level));
}

/** Floor of a junction: the invert of its box, or of the pipe that leads on. */
function junctionFloor(document: DesignDocument, part: Part, junctions: readonly Part[]): number {
  if (part.kind === 'catchBasin') return part.invertOut;
  const first = reach(document, part.id, junctions, true).parts.find((item) => item.kind === 'pipe');
  if (first?.kind === 'pipe') return first.invertUp;
  const into = document.system.parts.find((item) => item.drainsTo === part.id && item.kind === 'pipe');
  return into?.kind === 'pipe' ? into.invertDown : lowestGround(document);
}

const lowestGround = (document: DesignDocument): number => document.site.lowSpots.reduce((low, spot) => Math.min(low, lowestPoint(spot)), document.site.datum.level);

function junctionStore(document: DesignDocument, part: Part, junctions: readonly Part[]): JunctionStore {
  const floor = junctionFloor(document, part, junctions);
  const conduits = conduitsInto(document, part.id, junctions);
  const area = part.kind === 'catchBasin' ? Math.max(jointArea, (part.gratePerimeter * part.gratePerimeter) / 16) : jointArea;
  const top = document.site.lowSpots.reduce((high, spot) => Math.max(high, spot.rimLevel), floor + 0.5) + aboveRim;
  const below = conduitsVolume(conduits, floor);
  return {
    id: part.id,
    storage: LevelTable.tabulate(floor, top, junctionCells, (level) => area * (level - floor) + conduitsVolume(conduits, level) - below),
  };
}

/** Makes the stores and ways of a model, each kind by itself. */
export class ModelBuilder {
  readonly document: DesignDocument;
  readonly junctions: readonly Part[];
  readonly basins: readonly Basin[];
  readonly wells: readonly Outlet[];

  constructor(document: DesignDocument) {
    this.document = document;
    this.junctions = junctionsOf(document);
    this.basins = partsOf(document, 'basin');
    this.wells = partsOf(document, 'outlet').filter(({ dryWell }) => dryWell !== null);
  }

  returnsOf(outlet: Outlet): Returns | null {
    const { returns } = outlet;
    return returns === null || returns.share === 0 ? null : { pond: spotIndex(this.document, returns.lowSpot), share: returns.share };
  }

  end(end: PathEnd): LinkEnd {
    const junction = this.junctions.findIndex(({ id }) => id === end.id);
    const inside = { returns: null, standing: -Infinity };
    if (junction >= 0) return { to: { kind: 'junction', index: junction }, ...inside };
    if (end.kind === 'basin') return { to: { kind: 'basin', index: this.basins.findIndex(({ id }) => id === end.id) }, ...inside };
    const well = this.wells.findIndex(({ id }) => id === end.id);
    if (well >= 0) return { to: { kind: 'well', index: well }, ...inside };
    return end.kind === 'outlet' ? { to: null, returns: this.returnsOf(end), standing: end.waterLevel } : { to: null, returns: null, standing: -Infinity };
  }

  links(): Link[] {
    return inletsOf(this.document).flatMap(({ part }) => {
      const pond = spotIndex(this.document, part.lowSpot);
      const { parts, end } = reach(this.document, part.id, this.junctions);
      return end === null ? [] : [linkOf(this.document, part, parts, pond, this.end(end))];
    });
  }

  conduits(): Conduit[] {
    return this.junctions.flatMap((junction, index) => {
      const { parts, end } = reach(this.document, junction.id, this.junctions, true);
      return end === null ? [] : [conduitOf(junction, index, parts, junctionFloor(this.document, junction, this.junctions), this.end(end))];
    });
  }

  pondStores(): PondStore[] {
    return this.document.site.lowSpots.map((spot) => pondStore(this.document, spot));
  }

  wellStores(): WellStore[] {
    return this.wells.map((outlet) => wellStore(outlet, spotIndex(this.document, outlet.dryWell!.overflowsTo), this.returnsOf(outlet)));
  }

  junctionStores(): JunctionStore[] {
    return this.junctions.map((part) => junctionStore(this.document, part, this.junctions));
  }

  basinFrames(): Omit<BasinStore, 'storage' | keyof BasinPumps>[] {
    return this.basins.map((basin) => basinFrame(this.document, basin));
  }

  storageOf(basin: number): LevelTable {
    return basinStorage(this.document, this.basins[basin]!, this.junctions);
  }

  pumpsOf(basin: number): BasinPumps {
    const part = this.basins[basin]!;
    return basinPumps(this.document, part, { top: part.rimLevel + aboveRim, ...this.lineContext(this.wellStores()) });
  }

  private lineContext(wells: readonly WellStore[]): Omit<LineContext, 'top'> {
    return {
      wellOf: (outlet) => {
        const index = this.wells.findIndex(({ id }) => id === outlet);
        return index < 0 ? null : { index, top: wells[index]!.storage.top };
      },
      returnsOf: (outlet) => {
        const part = partsOf(this.document, 'outlet').find(({ id }) => id === outlet);
        return part === undefined ? null : this.returnsOf(part);
      },
    };
  }
}

/**
 * The whole system as stores and ways between them.
 * What pipes and channels hold stands in the store at their lower end and rises with its level.
 */
export function buildModel(document: DesignDocument): RoutingModel {
  const builder = new ModelBuilder(document);
  return {
    ponds: builder.pondStores(), wells: builder.wellStores(), links: builder.links(), conduits: builder.conduits(), junctions: builder.junctionStores(),
    basins: builder.basinFrames().map((frame, basin): BasinStore => ({ ...frame, storage: builder.storageOf(basin), ...builder.pumpsOf(basin) })),
  };
}

/** The site as it is, without any part of the system. */
export function buildBareModel(document: DesignDocument): RoutingModel {
  return { ponds: document.site.lowSpots.map((spot) => pondStore(document, spot)), basins: [], junctions: [], wells: [], links: [], conduits: [] };
}
