import type { DesignDocument } from '../document/document.ts';
import { dutyRating } from './basinLines.ts';
import { once, rateLine } from './lineRating.ts';
import type { BasinStore, LineStore, RoutingModel } from './model.ts';
import { partsOf } from './pathParts.ts';
import { pumpLineOf } from './pumpLine.ts';

/** Factors on a model for what-ifs and bands; each is 1 when left out. */
export interface Variation {
  /** On the volume of every low spot at every level, and on their steady losses. */
  readonly storage?: number;
  readonly loss?: number;
  /** On every pumped flow. */
  readonly pump?: number;
  /** Place between the lines of a `FrictionRange`, 0 rough to 1 smooth; the document's own friction without. */
  readonly friction?: number;
  /** On edge and opening of every grate. */
  readonly grate?: number;
}

/** All lines of a model rated at two Hazen-Williams coefficients. */
export interface FrictionRange {
  readonly rough: readonly (readonly LineStore[])[];
  readonly smooth: readonly (readonly LineStore[])[];
}

/** Rates every line at two coefficients; ratings are made when they are first asked for. */
export function frictionRange(document: DesignDocument, model: { readonly basins: readonly Pick<BasinStore, 'units' | 'lines'>[] }, rough: number, smooth: number): FrictionRange {
  const pumps = partsOf(document, 'pump');
  const at = (c: number): LineStore[][] => model.basins.map((basin) => basin.lines.map((line): LineStore => {
    const members = line.units.map((unit) => pumpLineOf(document, pumps.find(({ id }) => id === basin.units[unit]!.id)!));
    const kept = line.volume > 0 && line.runBack > 0 ? 1 - line.runBack / line.volume : 0;
    const { bottom, top } = line.flow(1);
    return { ...line, ...rateLine(members, { low: bottom, high: top }, kept, c) };
  }));
  return { rough: at(rough), smooth: at(smooth) };
}

function variedLine(line: LineStore, other: LineStore, share: number, factor: number): LineStore {
  return {
    ...line, flow: once((mask) => line.flow(mask).mixed(other.flow(mask), share, factor)),
    filling: once((mask) => line.filling(mask).mixed(other.filling(mask), share, factor)),
  };
}

/** The same model with some of its numbers changed; nothing is shared that a run writes to. */
export function variedModel(document: DesignDocument, model: RoutingModel, by: Variation, range: FrictionRange | null = null): RoutingModel {
  const { storage = 1, loss = 1, pump = 1, friction = 0, grate = 1 } = by;
  const pumps = partsOf(document, 'pump');
  return {
    ...model,
    ponds: model.ponds.map((pond) => ({ ...pond, storage: pond.storage.scaled(storage), loss: pond.loss * loss })),
    links: grate === 1 ? model.links : model.links.map((link) => ({ ...link, grateWeir: link.grateWeir * grate, grateOrifice: link.grateOrifice * grate })),
    basins: model.basins.map((basin, index): BasinStore => {
      const rough = range?.rough[index] ?? basin.lines;
      const smooth = range?.smooth[index] ?? basin.lines;
      const lines = rough.map((line, k) => variedLine(line, smooth[k]!, friction, pump));
      const own = basin.units.map(({ id }) => pumps.find((item) => item.id === id)!);
      return { ...basin, lines, pump: basin.pump === null ? null : dutyRating(own, lines, basin.storage.top, basin.storage.bottom) };
    }),
  };
}
