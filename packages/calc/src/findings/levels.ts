import { FOOT, INCH } from '../common/constants.ts';
import type { Pipe } from '../document/document.ts';
import { pathFrom, partsOf } from '../routing/pathParts.ts';
import type { Finding, Freeboard } from '../results/results.ts';
import { graded, setPart, stated, type CheckInput } from './finding.ts';
import { limits } from './limits.ts';

const nameOf = (list: readonly { readonly id: string; readonly name: string }[], id: string): string => list.find((item) => item.id === id)?.name ?? id;

/** L4: what gravity can do. For a pumped design it is the reason, for a gravity design it must hold. */
export function gravity({ document, results }: CheckInput): Finding[] {
  const pumped = partsOf(document, 'pump').length > 0;
  return results.gravity.flatMap((answer) => {
    const outlet = nameOf(document.site.candidateOutlets, answer.outlet);
    const params = { outlet, shortfall: answer.shortfall, withMargin: answer.shortfallWithMargin, spare: -answer.shortfallWithMargin };
    if (answer.feasible) return [stated('L4', pumped ? 'gravityPossible' : 'ok', pumped ? 'caution' : 'note', answer.outlet, params, limits.L4.source)];
    return [stated('L4', 'gravityShort', 'note', answer.outlet, params, limits.L4.source)];
  });
}

/** L4 for what is drawn: the fall between an inlet and its outlet, two inches kept in hand. */
export function gravityPaths({ document }: CheckInput): Finding[] {
  return [...partsOf(document, 'channel'), ...partsOf(document, 'catchBasin')].flatMap((inlet) => {
    const path = pathFrom(document, inlet.id);
    const outlet = path.find((part) => part.kind === 'outlet');
    const pipes = path.filter((part): part is Pipe => part.kind === 'pipe');
    const first = pipes[0];
    if (outlet?.kind !== 'outlet' || first === undefined || path.some((part) => part.kind === 'swale')) return [];
    const length = pipes.reduce((sum, pipe) => sum + pipe.length, 0);
    const slope = (first.invertUp - outlet.level - 2 * INCH) / length;
    return graded('L4', 'L4', slope, inlet.id, { pass: 'fallEnough', warn: 'fallSmall', fail: 'fallMissing' }, { inlet: inlet.name, outlet: outlet.name, slope });
  });
}

function freeboardParams(input: CheckInput, item: Freeboard): Record<string, number | string> {
  return {
    sill: nameOf(input.document.site.sills, item.sill), freeboard: item.lower, shortBy: -item.lower, middle: item.onTwin, upper: item.upper, returnPeriod: item.returnPeriod,
    duration: item.minutesOverSill * 60, without: item.withoutSystem,
  };
}

/** L5 and L6: freeboard at every sill by the lower end of the band. A sill under water is said in minutes. */
export function freeboard(input: CheckInput): Finding[] {
  const { document, results } = input;
  if (document.system.parts.length === 0) return [];
  const { designReturnPeriod, checkReturnPeriod } = document.rain;
  return results.freeboards.flatMap((item) => {
    const params = freeboardParams(input, item);
    const over = item.lower < 0;
    if (item.returnPeriod === designReturnPeriod) {
      return graded('L5', 'L5', item.lower, item.sill, { pass: 'ok', warn: 'freeboardThin', fail: over ? 'overSill' : 'freeboardShort' }, params);
    }
    if (item.returnPeriod === checkReturnPeriod) return graded('L6', 'L6', item.lower, item.sill, { pass: 'ok', warn: 'atSill', fail: 'overSill' }, params);
    return [];
  });
}

/** L2 and L3: paving or soil that falls toward the house needs a collector before the sill. */
export function fallAtHouse({ document }: CheckInput): Finding[] {
  return document.site.lowSpots.flatMap((spot) => {
    const near = document.site.spotLevels
      .filter((shot) => shot.station !== null && shot.station > 0 && shot.station < 10 * FOOT && shot.station < spot.station)
      .sort((a, b) => a.station! - b.station!)[0];
    if (near === undefined) return [];
    const slope = (near.level - spot.stageArea[0]!.level) / (spot.station - near.station!);
    const collected = [...partsOf(document, 'channel'), ...partsOf(document, 'catchBasin')].some((part) => part.lowSpot === spot.id);
    return graded('L3', 'L3', slope, spot.id, collected ? { pass: 'ok' } : { pass: 'ok', warn: 'fallSmall', fail: 'fallMissing' }, { lowSpot: spot.name, slope });
  });
}

/** L7: a grate lies 1/16 to 1/8 in below its surface, never proud of it. */
export function grateStep({ document }: CheckInput): Finding[] {
  return [...partsOf(document, 'channel'), ...partsOf(document, 'catchBasin')].flatMap((part) => {
    const spot = document.site.lowSpots.find((item) => item.id === part.lowSpot)!;
    const below = spot.stageArea[0]!.level - part.grateLevel;
    const params = { part: part.name, below, proud: -below };
    const remedy = setPart(document, part.id, 'grateLevel', spot.stageArea[0]!.level - INCH / 8, 'remedy.lowerGrate', { part: part.name });
    if (below > 0.25 * INCH + 1e-6) return [stated('L7', 'lip', 'stop', part.id, params, limits.L7.source, remedy)];
    if (below > 0.125 * INCH + 1e-6) return [stated('L7', 'low', 'caution', part.id, params, limits.L7.source, remedy)];
    if (below < -1e-6) return [stated('L7', 'proud', 'stop', part.id, params, limits.L7.source, remedy)];
    return [stated('L7', below < INCH / 16 - 1e-6 ? 'flush' : 'ok', below < INCH / 16 - 1e-6 ? 'caution' : 'note', part.id, params, limits.L7.source)];
  });
}
