import type { DesignDocument } from '../document/document.ts';
import type { Protection, ProtectedStorm } from '../results/decisions.ts';
import { asDesigned, Band, type BandCase } from './band.ts';
import { bandRanges } from './bandInputs.ts';
import type { EvaluationContext } from './context.ts';
import { whatIfOutage } from './whatIf.ts';

/** Most of a grate's opening that is counted on [-]. Source: ours; half clogged is the default of grates in sags, FHWA HEC-22. */
export const countedOpening = 0.5;

/** The same document with every grate counted at half open at most; itself where nothing changes. */
export function halfBlockedDocument(document: DesignDocument): DesignDocument {
  let changes = false;
  const parts = document.system.parts.map((part) => {
    if (part.kind === 'channel' && part.grate.clogging > countedOpening) {
      changes = true;
      return { ...part, grate: { ...part.grate, clogging: countedOpening } };
    }
    if (part.kind === 'catchBasin' && part.clogging > countedOpening) {
      changes = true;
      return { ...part, clogging: countedOpening };
    }
    return part;
  });
  return changes ? { ...document, system: { ...document.system, parts } } : document;
}

function halfBlocked(context: EvaluationContext): EvaluationContext {
  const counted = halfBlockedDocument(context.document);
  return counted === context.document ? context : context.variant(counted);
}

/**
 * Whether the lower end of the band stays at or above every sill. Given up as soon as more draws lie under water at one sill than the
 * lower end leaves out; the places that make up the lower end are then all below it, so the answer is that of the whole band.
 */
export function passes(band: Band, returnPeriod: number, bandCase: BandCase): boolean {
  const { samples, lowShare } = bandRanges;
  const most = Math.floor(lowShare * (samples - 1)) + 2;
  const under = band.context.sills.map(() => 0);
  for (const index of severest(band)) {
    const freeboards = band.ofDraw(index, returnPeriod, bandCase);
    for (let sill = 0; sill < freeboards.length; sill += 1) {
      if (freeboards[sill]! < 0) under[sill] = under[sill]! + 1;
      if (under[sill]! >= most) return false;
    }
  }
  return under.every((count) => count < most) && lowest(band, returnPeriod, bandCase) >= 0;
}

/** Draws with much rain first: those that flood are met early. */
function severest(band: Band): number[] {
  const rain = band.inputs.findIndex(({ input }) => input === 'rain');
  return band.draws.map((draw, index) => ({ share: draw[rain]!, index })).sort((a, b) => b.share - a.share).map(({ index }) => index);
}

export function lowest(band: Band, returnPeriod: number, bandCase: BandCase): number {
  return band.context.sills.reduce((least, _, sill) => Math.min(least, band.limits(returnPeriod, sill, bandCase).lower), Infinity);
}

function protectedStorm(band: Band, periods: readonly number[], caseOf: (returnPeriod: number) => BandCase): ProtectedStorm {
  let held: number | null = null;
  for (const returnPeriod of periods) {
    if (!passes(band, returnPeriod, caseOf(returnPeriod))) return { returnPeriod: held, wholeTable: false, lower: lowerOf(held), failsAt: returnPeriod };
    held = returnPeriod;
  }
  return { returnPeriod: held, wholeTable: true, lower: lowerOf(held), failsAt: null };

  function lowerOf(returnPeriod: number | null): number | null {
    return returnPeriod === null ? null : lowest(band, returnPeriod, caseOf(returnPeriod));
  }
}

/**
 * The largest storm of the rain table that a design keeps out, every smaller one with it: by the twin that runs only above its on level,
 * power on, inlets half blocked, lower end of the band at or above every sill. Beside it the same for half an hour without power and
 * for all roof water on the low spot. Nothing is said beyond the table. Null without a system, a low spot or a sill.
 */
export function protection(context: EvaluationContext, designBand: Band): Protection | null {
  if (!context.hasSystem || context.sills.length === 0) return null;
  const counted = halfBlocked(context);
  const band = counted === context ? designBand : new Band(counted);
  const periods = context.document.rain.table.returnPeriods;
  const powerOn = protectedStorm(band, periods, () => asDesigned);
  const upTo = powerOn.failsAt === null ? periods : periods.filter((period) => period <= powerOn.failsAt!);
  const outageOf = (returnPeriod: number): BandCase => {
    const { from } = counted.outageSearch(returnPeriod).worst(whatIfOutage);
    return { inflowCase: 'system', outage: [from, from + whatIfOutage] };
  };
  const hasGutter = context.document.system.parts.some(({ kind }) => kind === 'gutter');
  const found: Protection = {
    openShare: countedOpening, outage: whatIfOutage, powerOn,
    powerOut: context.hasPump ? protectedStorm(band, upTo, outageOf) : null,
    gutterOverflowing: hasGutter ? protectedStorm(band, upTo, () => ({ inflowCase: 'gutterOverflowing', outage: null })) : null,
  };
  context.count(counted);
  return found;
}
