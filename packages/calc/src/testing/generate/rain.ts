import type { Rain, RainTable } from '../../document/document.ts';
import { pow } from '../../math/pow.ts';
import { rounded, type Draw } from './draw.ts';

const durations = [300, 600, 900, 1800, 3600, 7200, 10_800, 21_600, 43_200, 86_400];
const periodSets = [[10, 25], [25, 100], [5, 10, 25, 50], [2, 10, 25, 100], [1, 2, 5, 10, 25, 50, 100, 200, 500, 1000]];

/** Depths grow with duration and return period as published tables do; the climate goes from dry hills to a wet coast. */
function table(draw: Draw): RainTable {
  const returnPeriods = draw.pick(periodSets);
  const hour = draw.between(15, 50);
  const growth = draw.between(0.12, 0.3);
  const tail = draw.between(0.2, 0.4);
  const depthOf = (duration: number, period: number): number => rounded(hour * pow(period / 2, growth) * pow(duration / 3600, duration < 3600 ? 0.5 : tail));
  const depths = durations.map((duration) => returnPeriods.map((period) => depthOf(duration, period)));
  const limits = draw.chance(0.5);
  const scaled = (factor: number): number[][] => depths.map((row) => row.map((depth) => rounded(depth * factor)));
  return {
    name: 'Generated', source: 'Generated for tests', illustrative: true, series: draw.pick(['partialDuration', 'annualMaximum'] as const), durations,
    returnPeriods, depths, lower: limits ? scaled(0.8) : null, upper: limits ? scaled(1.25) : null,
  };
}

/** Most storms are short, so that many sites can be routed in a minute. */
function storm(draw: Draw): Rain['storm'] {
  const block = draw.pick([300, 600, 900]);
  if (draw.chance(0.04)) return { method: draw.pick(['nrcsI', 'nrcsIA', 'nrcsII', 'nrcsIII'] as const), duration: 86_400, block: 900 };
  return { method: 'alternatingBlock', duration: draw.chance(0.04) ? 86_400 : draw.pick([3600, 3600, 7200, 10_800]), block };
}

export function generatedRain(draw: Draw): Rain {
  const made = table(draw);
  const designReturnPeriod = draw.pick(made.returnPeriods.filter((period) => period >= 10 && period <= 25));
  const recorded = draw.chance(0.25)
    ? { name: 'Recorded', source: 'Generated for tests', step: draw.pick([300, 900, 3600]), depths: Array.from({ length: draw.whole(1, 24) }, () => (draw.chance(0.3) ? 0 : draw.between(0, 12))) }
    : null;
  return { table: made, allowance: draw.chance(0.3) ? draw.between(0, 0.2) : 0, storm: storm(draw), recorded, designReturnPeriod, checkReturnPeriod: draw.pick(made.returnPeriods.filter((period) => period >= 25)) };
}
