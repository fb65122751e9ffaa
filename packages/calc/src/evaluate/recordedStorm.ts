import { MINUTE } from '../common/constants.ts';
import type { RecordedRun } from '../results/recordedRun.ts';
import { stormInflow } from '../routing/inflow.ts';
import { runStorm, type RunMode, type RunResult } from '../routing/run.ts';
import { recordedRunoff } from '../routing/storm.ts';
import type { EvaluationContext } from './context.ts';

/** A picture of a recorded storm has no more samples than these; each is the highest level of its span. Source: ours. */
const mostSamples = 600;

const round = (value: number, scale: number): number => Math.floor(value * scale + 0.5) / scale;

function thinned(levels: ArrayLike<number>, stride: number): number[] {
  return Array.from({ length: Math.floor((levels.length + stride - 1) / stride) }, (_, i) => {
    let highest = levels[i * stride]!;
    for (let k = i * stride + 1; k < Math.min(levels.length, (i + 1) * stride); k += 1) highest = Math.max(highest, levels[k]!);
    return round(highest, 1e5);
  });
}

/** The measured storm through the site with and without its system: levels, freeboards and pump events. Null without one. */
export function recordedStorm(context: EvaluationContext): RecordedRun | null {
  const { document, model, bareModel, sills } = context;
  const { recorded } = document.rain;
  const storm = recordedRunoff(document);
  if (recorded === null || storm === null || document.site.lowSpots.length === 0) return null;
  const inflow = stormInflow(document, storm, 'system');
  const route = (mode: RunMode, record: boolean): RunResult => context.counted(runStorm(model, inflow, { mode, record, sills }));
  const bare = context.counted(runStorm(bareModel, stormInflow(document, storm, 'bare'), { mode: 'onTwin', sills }));
  const [real, off, on] = [route('real', true), route('offTwin', false), route('onTwin', false)] as const;
  const stride = Math.max(1, Math.floor((storm.steps + mostSamples - 1) / mostSamples));
  return {
    name: recorded.name, step: stride * storm.step, starts: real.events.filter(({ kind }) => kind === 'pumpOn').length, runTime: real.runTime,
    levels: document.site.lowSpots.map(({ id }, pond) => ({ lowSpot: id, maxLevel: real.maxPond[pond]!, levels: thinned(real.samples!.pond[pond]!, stride) })),
    freeboards: sills.map(({ sill, pond, level }, index) => ({
      sill: sill.id, withSystem: level - real.maxPond[pond]!, withoutSystem: level - bare.maxPond[pond]!, offTwin: level - off.maxPond[pond]!, onTwin: level - on.maxPond[pond]!,
      minutesOverSill: on.secondsOverSill[index]! / MINUTE, minutesOverSillWithoutSystem: bare.secondsOverSill[index]! / MINUTE,
    })),
    events: real.events.map(({ time, kind, basin, unit }) => ({ time: round(time, 1e3), kind, part: model.basins[basin]!.units[unit]!.id })),
  };
}
