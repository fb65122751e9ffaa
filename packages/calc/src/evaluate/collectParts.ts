import type { CatchBasin, Channel, DesignDocument } from '../document/document.ts';
import { roofLineHead } from '../findings/roof.ts';
import { ALLOWED_GRATE_HEAD, sagGrateFlow, type SagGrate } from '../inlet/sagGrate.ts';
import { PI } from '../math/constants.ts';
import { dryWellEmptying, dryWellSeepage, dryWellVolume } from '../outlet/dryWell.ts';
import type { DryWellResult, GrateResult, RoofLineResult, SwaleResult, UnderdrainResult, WellRun } from '../results/results.ts';
import { inletsOf } from '../routing/buildModel.ts';
import { underdrainFlow } from '../routing/groundWater.ts';
import { partsOf } from '../routing/pathParts.ts';
import { vSwale } from '../swale/vSwale.ts';
import type { EvaluationContext } from './context.ts';
import { flowThrough, inletPeak } from './flows.ts';

/** A grate as its edge and opening: both long sides and both ends of a channel's. */
export function sagGrateOf(inlet: Channel | CatchBasin): SagGrate {
  if (inlet.kind === 'catchBasin') return { perimeter: inlet.gratePerimeter, openArea: inlet.grateOpenArea, clogging: inlet.clogging };
  const { length, width, grate } = inlet;
  return { perimeter: 2 * (length + width), openArea: length * width * grate.openAreaRatio, clogging: grate.clogging };
}

export function grateResults(document: DesignDocument): GrateResult[] {
  return inletsOf(document).flatMap(({ part }) => {
    const grate = sagGrateOf(part);
    if (grate.openArea === 0) return [];
    return [{ part: part.id, capacity: sagGrateFlow(grate, ALLOWED_GRATE_HEAD).capacity, flow: inletPeak(document, part, document.rain.designReturnPeriod) }];
  });
}

export function roofLineResults(document: DesignDocument): RoofLineResult[] {
  return partsOf(document, 'roofLine').map((line) => {
    const flow = flowThrough(document, line, document.rain.designReturnPeriod);
    return { part: line.id, flow, standingLevel: roofLineHead(document, line, flow), volume: (PI / 4) * line.diameter * line.diameter * line.length };
  });
}

/** A swale without fall is refused by its check; here it has no depth. */
export function swaleResults(document: DesignDocument): SwaleResult[] {
  return partsOf(document, 'swale').filter((swale) => swale.slope > 0).map((swale) => {
    const flow = flowThrough(document, swale, document.rain.designReturnPeriod);
    return { part: swale.id, flow, ...vSwale(swale, flow), share: vSwale(swale, flow).depth / swale.depth };
  });
}

export function underdrainResults(document: DesignDocument): UnderdrainResult[] {
  return partsOf(document, 'underdrain').map((drain) => ({ part: drain.id, inflow: underdrainFlow(drain) }));
}

/** A dry well soaks through base and wetted sides at the rate that the design names. */
export function dryWellResults(document: DesignDocument): DryWellResult[] {
  return partsOf(document, 'outlet').flatMap(({ id, dryWell }) => {
    if (dryWell === null) return [];
    const well = { ...dryWell, baseRate: dryWell.infiltrationRate, sideRate: dryWell.infiltrationRate };
    const emptyTime = dryWell.infiltrationRate > 0 ? dryWellEmptying(well, well.depth, 0) : null;
    return [{ part: id, store: dryWellVolume(well), soakage: dryWellSeepage(well, well.depth), emptyTime }];
  });
}

/** Every dry well in the designed storm: how high it stands, what it soaks away and what runs over. */
export function wellRuns(context: EvaluationContext): WellRun[] {
  const { wells } = context.model;
  if (wells.length === 0) return [];
  const returnPeriod = context.document.rain.designReturnPeriod;
  const run = context.run(returnPeriod, 'system', { mode: 'onTwin', record: true });
  return wells.map(({ id }, index) => ({ part: id, returnPeriod, highestLevel: run.maxWell[index]!, ...run.wells[index]! }));
}
