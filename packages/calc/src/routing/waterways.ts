import type { Basin, CatchBasin, Channel, DesignDocument, Outlet, Part, PartKind } from '../document/document.ts';
import { partsOf, pathFrom } from './pathParts.ts';

/** Kinds that water of rain or ground runs through by gravity. */
const carrying: readonly PartKind[] = ['gutter', 'leader', 'channel', 'catchBasin', 'pipe', 'cleanout', 'underdrain', 'swale'];
/** Kinds at whose head paths can meet in a store of their own. */
const meeting: readonly PartKind[] = ['catchBasin', 'pipe', 'cleanout'];

export interface Inlet {
  readonly part: Channel | CatchBasin;
  /** The inlet and what follows, down to the part before the first junction, or to the basin or outlet. */
  readonly path: readonly Part[];
}

/** Where a path ends: at a junction (the part at its head), a basin or an outlet. */
export type PathEnd = Basin | Outlet | Part;

/**
 * Parts at whose head paths meet and which therefore are stores of the routing: a pipe or cleanout that two parts or more
 * drain to, and a catch basin that something drains to beside its own low spot.
 */
export function junctionsOf(document: DesignDocument): Part[] {
  const feeders = new Map<string, number>();
  for (const part of document.system.parts) {
    if (part.drainsTo !== null && carrying.includes(part.kind)) feeders.set(part.drainsTo, (feeders.get(part.drainsTo) ?? 0) + 1);
  }
  const found = document.system.parts.filter((part) => meeting.includes(part.kind) && (feeders.get(part.id) ?? 0) >= (part.kind === 'catchBasin' ? 1 : 2));
  // Upstream ones first: water passes them in this order.
  return found.sort((a, b) => pathFrom(document, b.id).length - pathFrom(document, a.id).length);
}

/** The way from a part down to the first junction, basin or outlet, that one left out. */
export function reach(document: DesignDocument, from: string, junctions: readonly Part[], own = false): { readonly parts: readonly Part[]; readonly end: PathEnd | null } {
  const path = pathFrom(document, from);
  const stop = path.findIndex((part, index) => part.kind === 'basin' || part.kind === 'outlet' || ((index > 0 || !own) && junctions.some(({ id }) => id === part.id)));
  return stop < 0 ? { parts: path, end: null } : { parts: path.slice(0, stop), end: path[stop]! };
}

/** Channels and catch basins with the whole path that their water takes. */
export function inletsOf(document: DesignDocument): Inlet[] {
  const inlets: (Channel | CatchBasin)[] = [...partsOf(document, 'channel'), ...partsOf(document, 'catchBasin')];
  return inlets.map((part) => ({ part, path: pathFrom(document, part.id) }));
}
