import { FOOT } from '../common/constants.ts';
import type { DesignDocument, RainTable, Surface } from '../document/document.ts';
import { seededRandom } from '../math/random.ts';
import { depthAt } from '../rain/depthAt.ts';
import { buildInflow, inflowTargets, routesOf } from '../routing/inflow.ts';
import type { RoutingModel } from '../routing/model.ts';
import { runStorm, type StormInflow } from '../routing/run.ts';
import { frictionRange, variedModel } from '../routing/variation.ts';
import type { EvaluationContext } from './context.ts';
import { restlessWindow } from './window.ts';

/**
 * What is varied, evenly between these ends. Source: ours, stated with every band:
 * rain +-20 % where the table gives no limits; hard surfaces -10/+5 %, soft ones +-30 %; each level shot +-0.01 ft;
 * stage-storage +-10 %; pump flow +-8 %; Hazen-Williams C 130 to 150; existing loss +-50 %.
 */
export const bandRanges = {
  samples: 200, rain: 0.2, hardLow: 0.9, hardHigh: 1.05, soft: 0.3, shot: 0.01 * FOOT, storage: 0.1, pump: 0.08, frictionLow: 130, frictionHigh: 150,
  loss: 0.5, lowShare: 0.1, highShare: 0.9,
} as const;

const hard: readonly Surface[] = ['roof', 'paving', 'pool'];
const variables = ['rain', 'hard', 'soft', 'sillShot', 'pondShot', 'storage', 'pump', 'friction', 'loss'] as const;
type Draw = Readonly<Record<(typeof variables)[number], number>>;

/** Latin hypercube: each variable takes every one of `count` even slices once, in a shuffled order. Source: McKay and others 1979. */
export function latinHypercube(count: number, seed: number): Draw[] {
  const random = seededRandom(seed);
  const columns = variables.map(() => {
    const order = Array.from({ length: count }, (_, i) => i);
    for (let i = count - 1; i > 0; i -= 1) {
      const j = Math.floor(random() * (i + 1));
      const kept = order[i]!;
      order[i] = order[j]!;
      order[j] = kept;
    }
    return order.map((slice) => (slice + random()) / count);
  });
  return Array.from({ length: count }, (_, i) => Object.fromEntries(variables.map((name, c) => [name, columns[c]![i]!])) as Draw);
}

const within = (share: number, low: number, high: number): number => low + share * (high - low);
const about = (share: number, range: number): number => within(share, 1 - range, 1 + range);

/** Ends of the rain factor: the table's own 90 % limits of the hour, else +-20 %. */
function rainRange(table: RainTable, returnPeriod: number): readonly [number, number] {
  if (table.lower === null || table.upper === null) return [1 - bandRanges.rain, 1 + bandRanges.rain];
  const hour = Math.min(Math.max(3600, table.durations[0]!), table.durations[table.durations.length - 1]!);
  const mean = depthAt(table, hour, returnPeriod);
  return [depthAt(table, hour, returnPeriod, table.lower) / mean, depthAt(table, hour, returnPeriod, table.upper) / mean];
}

export interface Band {
  limits(returnPeriod: number, sill: number): { readonly lower: number; readonly upper: number };
}

/** The 10 and 90 % ends of the freeboard over seeded runs of the twin that runs only above its on level. */
export function freeboardBand(context: EvaluationContext): Band {
  const { document } = context;
  const draws = latinHypercube(bandRanges.samples, document.seed);
  const models = draws.map(modelVariation(context));
  const routes = routesOf(document, 'system');
  const targets = inflowTargets(document, 'system');
  const ends = new Map<string, { lower: number; upper: number }>();
  for (const returnPeriod of context.periods) {
    const storm = context.storm(returnPeriod);
    const window = restlessWindow(context.model, context.inflow(returnPeriod, 'system'));
    const [low, high] = rainRange(document.rain.table, returnPeriod);
    const found = context.sills.map((): number[] => []);
    let inflow: Required<StormInflow> | null = null;
    draws.forEach((draw, index) => {
      const factors = runoffFactors(document, draw, within(draw.rain, low, high));
      inflow = buildInflow(routes, targets, storm, factors, window, inflow);
      const run = runStorm(models[index]!, inflow, { mode: 'onTwin', window });
      const shots = within(draw.sillShot, -bandRanges.shot, bandRanges.shot) - within(draw.pondShot, -bandRanges.shot, bandRanges.shot);
      context.sills.forEach(({ pond, level }, sill) => { found[sill]!.push(level + shots - run.maxPond[pond]!); });
    });
    found.forEach((freeboards, sill) => {
      freeboards.sort((a, b) => a - b);
      ends.set(`${returnPeriod} ${sill}`, { lower: quantile(freeboards, bandRanges.lowShare), upper: quantile(freeboards, bandRanges.highShare) });
    });
  }
  return { limits: (returnPeriod, sill) => ends.get(`${returnPeriod} ${sill}`)! };
}

function quantile(sorted: readonly number[], share: number): number {
  const place = share * (sorted.length - 1);
  const i = Math.floor(place);
  const low = sorted[i]!;
  return low + ((sorted[i + 1] ?? low) - low) * (place - i);
}

function runoffFactors(document: DesignDocument, draw: Draw, rain: number): number[] {
  return document.site.catchments.map(({ surface, coefficient }) => {
    if (!hard.includes(surface)) return rain * about(draw.soft, bandRanges.soft);
    const most = coefficient > 0 ? Math.min(bandRanges.hardHigh, 1 / coefficient) : 1;
    return rain * within(draw.hard, bandRanges.hardLow, most);
  });
}

/** The routing model of one draw: pumps are rated at both ends of the friction and mixed between. */
function modelVariation(context: EvaluationContext): (draw: Draw) => RoutingModel {
  const { document, model } = context;
  const range = frictionRange(document, model, bandRanges.frictionLow, bandRanges.frictionHigh);
  return (draw) => variedModel(document, model, {
    storage: about(draw.storage, bandRanges.storage), loss: about(draw.loss, bandRanges.loss), pump: about(draw.pump, bandRanges.pump), friction: draw.friction,
  }, range);
}
