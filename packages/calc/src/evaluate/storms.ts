import { MINUTE } from '../common/constants.ts';
import type { FamilyCase, FamilyMember, Freeboard, StormRun } from '../results/results.ts';
import type { RunResult } from '../routing/run.ts';
import type { Band } from './band.ts';
import type { EvaluationContext } from './context.ts';

/** The storm graph runs from three hours before the peak to six after it, the slider pictures to four. Source: ours. */
const graphBefore = 3 * 3600;
const graphAfter = 6 * 3600;
const familyAfter = 4 * 3600;
const familyStep = 5 * MINUTE;
/** Power out for half an hour around the peak, the slider's picture of it. Source: the trade's what-if list. */
const powerOutHalf = 15 * MINUTE;

/** Series are kept to a hundredth of a millimetre and a millilitre per second. */
const round = (value: number, scale: number): number => Math.floor(value * scale + 0.5) / scale;
const levelOf = (value: number): number => round(value, 1e5);
const flowOf = (value: number): number => round(value, 1e8);

/** Freeboards of every sill and return period; the band stands on the twin that runs only above its on level. */
export function freeboards(context: EvaluationContext, band: Band | null): Freeboard[] {
  return context.periods.flatMap((returnPeriod) => {
    const bare = context.run(returnPeriod, 'bare', { mode: 'onTwin', record: true });
    const real = context.run(returnPeriod, 'system', { mode: 'real', record: returnPeriod === context.document.rain.designReturnPeriod });
    const off = context.run(returnPeriod, 'system', { mode: 'offTwin' });
    const on = context.run(returnPeriod, 'system', { mode: 'onTwin', record: true });
    return context.sills.map(({ sill, pond, level }, index) => {
      const freeboardOf = (run: RunResult): number => level - run.maxPond[pond]!;
      const limits = band === null ? null : band.limits(returnPeriod, index);
      return {
        sill: sill.id, returnPeriod, withSystem: freeboardOf(real), withoutSystem: freeboardOf(bare), offTwin: freeboardOf(off), onTwin: freeboardOf(on),
        lower: limits?.lower ?? freeboardOf(on), upper: limits?.upper ?? freeboardOf(on),
        minutesOverSill: on.secondsOverSill[index]! / MINUTE, minutesOverSillWithoutSystem: bare.secondsOverSill[index]! / MINUTE,
      };
    });
  });
}

/** The designed storm as the real pump runs through it. */
export function stormRun(context: EvaluationContext): StormRun | null {
  if (context.document.site.lowSpots.length === 0) return null;
  const returnPeriod = context.document.rain.designReturnPeriod;
  const run = context.run(returnPeriod, 'system', { mode: 'real', record: true });
  const storm = context.storm(returnPeriod);
  const inflow = context.inflow(returnPeriod, 'system');
  const first = Math.max(0, Math.floor((context.peakTime - graphBefore) / storm.step));
  const last = Math.min(storm.steps, Math.floor((context.peakTime + graphAfter) / storm.step));
  const cut = (series: ArrayLike<number> | undefined, to: (value: number) => number): number[] =>
    series === undefined ? [] : Array.from({ length: last - first }, (_, i) => to(series[first + i]!));
  const pumpId = (basin: number, unit: number): string => context.model.basins[basin]?.units[unit]?.id ?? '';
  return {
    returnPeriod, start: first * storm.step, step: storm.step,
    intensity: cut(storm.intensity, (value) => round(value, 1e10)), inflow: cut(inflow.ponds[0], flowOf), pumpFlow: cut(run.samples?.pump[0], flowOf),
    pondLevel: cut(run.samples?.pond[0], levelOf), basinLevel: cut(run.samples?.basin[0], levelOf),
    events: run.events.map(({ time, kind, basin, unit }) => ({ time: round(time, 1e3), kind, part: pumpId(basin, unit) })),
    starts: run.events.filter(({ kind }) => kind === 'pumpOn').length, runTime: run.runTime, maxPond: run.maxPond[0]!,
  };
}

/** The run behind one picture of the slider. */
export function familyRun(context: EvaluationContext, familyCase: FamilyCase, returnPeriod: number): RunResult {
  const { peakTime } = context;
  switch (familyCase) {
    case 'noSystem': return context.run(returnPeriod, 'bare', { mode: 'onTwin', record: true });
    case 'system': return context.run(returnPeriod, 'system', { mode: 'onTwin', record: true });
    case 'powerOut': return context.run(returnPeriod, 'system', { mode: 'onTwin', record: true, outage: [peakTime - powerOutHalf, peakTime + powerOutHalf] });
    case 'gutterOverflowing': return context.run(returnPeriod, 'gutterOverflowing', { mode: 'onTwin', record: true });
  }
}

const familyCases: readonly FamilyCase[] = ['noSystem', 'system', 'powerOut', 'gutterOverflowing'];

/** The pictures behind the customer's slider: every return period by every case, first low spot and first sill. */
export function family(context: EvaluationContext): FamilyMember[] {
  if (context.document.site.lowSpots.length === 0) return [];
  const { step, steps } = context.storm(context.periods[0] ?? context.document.rain.designReturnPeriod);
  const stride = Math.max(1, Math.floor(familyStep / step));
  const first = Math.max(0, Math.floor((context.peakTime - graphBefore) / step));
  const last = Math.min(steps, Math.floor((context.peakTime + familyAfter) / step));
  return context.periods.flatMap((returnPeriod) => familyCases.map((familyCase) => {
    const run = familyRun(context, familyCase, returnPeriod);
    const levels: number[] = [];
    for (let i = first; i < last; i += stride) levels.push(levelOf(run.samples!.pond[0]![i]!));
    return {
      case: familyCase, returnPeriod, maxLevel: run.maxPond[0]!, minutesOverSill: (run.secondsOverSill[0] ?? 0) / MINUTE, start: first * step,
      step: stride * step, levels,
    };
  }));
}
