import { MINUTE } from '../common/constants.ts';
import type { WhatIf, WhatIfSill } from '../results/decisions.ts';
import type { RunResult } from '../routing/run.ts';
import type { EvaluationContext } from './context.ts';
import { whatIfSetups, type WhatIfSetup } from './whatIfCases.ts';

/** Length of the outage of the what-if [s]: half an hour. Source: the trade's what-if list. */
export const whatIfOutage = 30 * MINUTE;

function sillsOf(context: EvaluationContext, runs: readonly RunResult[]): WhatIfSill[] {
  return context.sills.map(({ sill, pond, level }, index) => ({
    sill: sill.id,
    freeboard: runs.reduce((least, run) => Math.min(least, level - run.maxPond[pond]!), Infinity),
    minutesOverSill: runs.reduce((most, run) => Math.max(most, run.secondsOverSill[index]!), 0) / MINUTE,
  }));
}

function maxLevelsOf(context: EvaluationContext, runs: readonly RunResult[]): number[] {
  return context.document.site.lowSpots.map((_, pond) => runs.reduce((most, run) => Math.max(most, run.maxPond[pond]!), -Infinity));
}

function whatIf(context: EvaluationContext, setup: WhatIfSetup): WhatIf[] {
  const variant = setup.document === context.document ? context : context.variant(setup.document);
  const found = context.periods.map((returnPeriod): WhatIf => {
    const runs = [variant.run(returnPeriod, setup.inflowCase, { mode: 'onTwin' })];
    if (setup.real) runs.push(variant.run(returnPeriod, setup.inflowCase, { mode: 'real' }));
    return { case: setup.case, at: setup.at, returnPeriod, outage: null, maxLevels: maxLevelsOf(context, runs), sills: sillsOf(context, runs) };
  });
  context.count(variant);
  return found;
}

/** Half an hour without power at the start that is worst, in each storm. */
function powerOut(context: EvaluationContext): WhatIf[] {
  if (!context.hasPump || context.sills.length === 0) return [];
  return context.periods.map((returnPeriod): WhatIf => {
    const { from } = context.outageSearch(returnPeriod).worst(whatIfOutage);
    const outage = [from, from + whatIfOutage] as const;
    const runs = [context.run(returnPeriod, 'system', { mode: 'onTwin', outage })];
    return { case: 'powerOut', at: null, returnPeriod, outage, maxLevels: maxLevelsOf(context, runs), sills: sillsOf(context, runs) };
  });
}

/**
 * What happens when something fails, in every storm: highest levels, freeboards and minutes over each sill,
 * by the twin that runs only above its on level. Without its check valve a line runs back at every stop, which no twin sees:
 * there the worse of twin and real run counts.
 */
export function whatIfs(context: EvaluationContext): WhatIf[] {
  if (context.document.site.lowSpots.length === 0) return [];
  const cases = context.hasSystem ? whatIfSetups(context.document) : whatIfSetups(context.document).filter((setup) => setup.case === 'noSystem');
  return [...cases.flatMap((setup) => whatIf(context, setup)), ...powerOut(context)];
}
