import type { DesignDocument } from '../document/document.ts';
import { limits } from '../findings/limits.ts';
import { gravityFall } from '../levels/gravityFall.ts';
import type { BandResult, Decision, RankedInput, RankedSwing } from '../results/decisions.ts';
import { runStorm } from '../routing/run.ts';
import type { Band } from './band.ts';
import { bandRanges } from './bandInputs.ts';
import type { EvaluationContext } from './context.ts';

const least = (values: readonly number[]): number => values.reduce((low, value) => Math.min(low, value), Infinity);

/** Whether gravity reaches any candidate outlet with its margin, with one outlet or the collector moved by a height. */
function gravityReaches(document: DesignDocument, outletMoved: string | null, height: number): boolean {
  return document.site.candidateOutlets.some((outlet) => {
    if (outletMoved === null) return gravityFall({ ...outlet, collectorInvert: outlet.collectorInvert + height }).feasible;
    return gravityFall(outlet.id === outletMoved ? { ...outlet, level: outlet.level + height } : outlet).feasible;
  });
}

/** Whether a shot may turn pump into no pump. The collector hangs below its low spot and moves with it. */
function decidesGravity(document: DesignDocument, input: RankedInput, at: string | null): boolean {
  if (document.site.candidateOutlets.length === 0 || !['pondShot', 'invertShot', 'outletShot'].includes(input)) return false;
  const moved = input === 'outletShot' ? at : null;
  return gravityReaches(document, moved, -bandRanges.shot) !== gravityReaches(document, moved, bandRanges.shot);
}

/**
 * Whether a shot decides that the site floods without a system. A shot moves the freeboard by no more than its own height,
 * so only a freeboard that thin is looked at; the rim is run at both ends, the others move it by just that height.
 */
function decidesNeed(context: EvaluationContext, returnPeriod: number, input: RankedInput, at: string | null): boolean {
  if (!['sillShot', 'pondShot', 'rimShot'].includes(input)) return false;
  const bare = context.run(returnPeriod, 'bare', { mode: 'onTwin', record: true });
  const freeboards = context.sills.map(({ pond, level }) => level - bare.maxPond[pond]!);
  if (!(Math.abs(least(freeboards)) <= bandRanges.shot)) return false;
  const ends = [-bandRanges.shot, bandRanges.shot].map((height) => {
    if (input !== 'rimShot') {
      const sign = input === 'sillShot' ? 1 : -1;
      return least(context.sills.map(({ sill }, index) => freeboards[index]! + (at === (sign > 0 ? sill.id : sill.lowSpot) ? sign * height : 0)));
    }
    const ponds = context.bareModel.ponds.map((pond) => (pond.id === at ? { ...pond, rimLevel: Math.max(pond.storage.bottom, pond.rimLevel + height) } : pond));
    const run = runStorm({ ...context.bareModel, ponds }, context.inflow(returnPeriod, 'bare'), { mode: 'onTwin' });
    return least(context.sills.map(({ pond, level }) => level - run.maxPond[pond]!));
  });
  return (ends[0]! < 0) !== (ends[1]! < 0);
}

/** Whether the freeboard is judged otherwise at the two ends: by check L5, its pass and its fail. */
function decidesFreeboard(low: number, high: number): boolean {
  return [limits.L5.pass, limits.L5.fail].some((limit) => (low < limit) !== (high < limit));
}

function swingOf(band: Band, returnPeriod: number, index: number): RankedSwing {
  const { context } = band;
  const { input, at } = band.inputs[index]!;
  const end = (share: number): number => least(band.freeboards(returnPeriod, band.middle.map((middle, i) => (i === index ? share : middle))));
  const low = end(0);
  const high = end(1);
  const decides: Decision | null = decidesGravity(context.document, input, at) ? 'gravity'
    : decidesNeed(context, returnPeriod, input, at) ? 'need' : decidesFreeboard(low, high) ? 'freeboard' : null;
  return { input, at, low, high, swing: Math.abs(high - low), decides };
}

/** Shots of candidate outlets: they move no water, but may decide between gravity and a pump. */
function outletSwings(document: DesignDocument, middle: number): RankedSwing[] {
  return document.site.candidateOutlets.filter(({ id }) => decidesGravity(document, 'outletShot', id))
    .map(({ id }) => ({ input: 'outletShot', at: id, low: middle, high: middle, swing: 0, decides: 'gravity' }));
}

const weight: Readonly<Record<Decision, number>> = { gravity: 3, need: 2, freeboard: 1 };

/**
 * Which input moves the freeboard of the designed storm most: each from its low to its high end alone, all others as in the document.
 * What decides something comes first, then the larger swing, then the order of the inputs.
 * Source: one-at-a-time sensitivity; ranges ours, see bandRanges
 */
export function bandRanking(band: Band): BandResult {
  const { context } = band;
  const returnPeriod = context.document.rain.designReturnPeriod;
  const middle = least(band.freeboards(returnPeriod, band.middle));
  const swings = [...band.inputs.map((_, index) => swingOf(band, returnPeriod, index)), ...outletSwings(context.document, middle)];
  const rank = ({ decides }: RankedSwing): number => (decides === null ? 0 : weight[decides]);
  const ranking = swings.map((swing, index) => ({ swing, index }))
    .sort((a, b) => rank(b.swing) - rank(a.swing) || b.swing.swing - a.swing.swing || a.index - b.index).map(({ swing }) => swing);
  return { returnPeriod, samples: bandRanges.samples, middle, ranking };
}
