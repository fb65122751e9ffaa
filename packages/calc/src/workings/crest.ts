import type { DesignDocument, LowSpot } from '../document/document.ts';
import { areaAtLevel, stageCurve, volumeAtLevel, type StageCurve } from '../levels/stageVolume.ts';
import type { Working } from '../results/results.ts';
import type { RunResult, StormInflow } from '../routing/run.ts';
import { step, symbol, working, type WorkingInput } from './working.ts';

interface Crest {
  readonly result: string;
  readonly value: number;
  readonly run: RunResult;
  readonly inflow: StormInflow;
}

/** What the rain brought to the first low spot until its highest level [m3]. */
function broughtUntilCrest(run: RunResult, inflow: StormInflow): number {
  const levels = run.samples?.pond[0];
  const flows = inflow.ponds[0];
  if (levels === undefined || flows === undefined) return 0;
  let crest = 0;
  for (let i = 1; i < levels.length; i += 1) if (levels[i]! > levels[crest]!) crest = i;
  let volume = 0;
  for (let i = 0; i <= crest && i < flows.length; i += 1) volume += flows[i]! * inflow.step;
  return volume;
}

/** Stage below a level: its place in the list, and the volume that stands below it. */
function stageBelow(spot: LowSpot, curve: StageCurve, level: number): { readonly index: number; readonly volume: number } {
  let index = 0;
  while (index + 1 < curve.levels.length && curve.levels[index + 1]! <= level) index += 1;
  return { index, volume: volumeAtLevel(curve, curve.levels[index]!) };
}

/** Highest level of the first low spot from the water that stands in it then: what came less what left, filled into its shape. */
export function crestSheet({ document }: WorkingInput, { result, value, run, inflow }: Crest): Working {
  const spot = document.site.lowSpots[0]!;
  const curve = stageCurve(spot.stageArea);
  const stored = volumeAtLevel(curve, value);
  const { index, volume } = stageBelow(spot, curve, value);
  const path = `/site/lowSpots/0/stageArea/${index}`;
  const brought = broughtUntilCrest(run, inflow);
  const base = { result, at: spot.id, value, unit: 'level', tolerance: 1e-8, source: 'Coupled level-pool routing, Chow, Maidment and Mays 1988 section 8.2; shape of the low spot by the frustum rule' };
  const foot = symbol('z_a', 'stageLevel', spot.stageArea[index]!.level, 'level', `${path}/level`);
  if (stored <= 0) return working({ ...base, formula: 'z_max = z_a', symbols: [foot] });
  const area = areaAtLevel(curve, value);
  return working({
    ...base, formula: 'z_max = z_a + 3*(V - V_a)/(A_a + sqrt(A_a*A) + A)', symbols: [
      symbol('V_in', 'broughtUntilCrest', brought, 'volume'), symbol('V_out', 'leftUntilCrest', brought - stored, 'volume'), foot,
      symbol('A_a', 'stageArea', spot.stageArea[index]!.area, 'area', `${path}/area`), symbol('V_a', 'volumeBelowStage', volume, 'volume'),
      symbol('A', 'surfaceAtCrest', area, 'area'),
    ],
    steps: [step('V', 'storedAtCrest', 'V_in - V_out', stored, 'volume')],
  });
}

/** A highest level from the water that stands below it then. */
export function storedSheet(document: DesignDocument, place: number, result: string, value: number, source: string): Working {
  const spot = document.site.lowSpots[place]!;
  const curve = stageCurve(spot.stageArea);
  const stored = volumeAtLevel(curve, value);
  const { index, volume } = stageBelow(spot, curve, value);
  const path = `/site/lowSpots/${place}/stageArea/${index}`;
  const base = { result, at: spot.id, value, unit: 'level', tolerance: 1e-8, source: `${source}; shape of the low spot by the frustum rule` };
  const foot = symbol('z_a', 'stageLevel', spot.stageArea[index]!.level, 'level', `${path}/level`);
  if (stored <= 0) return working({ ...base, formula: 'z_max = z_a', symbols: [foot] });
  return working({
    ...base, formula: 'z_max = z_a + 3*(V - V_a)/(A_a + sqrt(A_a*A) + A)', symbols: [
      symbol('V', 'storedAtCrest', stored, 'volume'), foot, symbol('A_a', 'stageArea', spot.stageArea[index]!.area, 'area', `${path}/area`),
      symbol('V_a', 'volumeBelowStage', volume, 'volume'), symbol('A', 'surfaceAtCrest', areaAtLevel(curve, value), 'area'),
    ],
  });
}
