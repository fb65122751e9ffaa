import type { StageArea } from '../document/document.ts';
import { MINIMUM_FALL, OUTLET_MARGIN } from '../levels/gravityFall.ts';
import { PI } from '../math/constants.ts';
import { areaAtLevel, stageCurve } from '../levels/stageVolume.ts';
import type { Working, WorkingSymbol } from '../results/results.ts';
import { symbol, working, type WorkingInput } from './working.ts';

/** What gravity lacks to each candidate outlet. */
export function gravityWorkings({ document, results }: WorkingInput): Working[] {
  return results.gravity.flatMap((answer, index) => {
    const outlet = document.site.candidateOutlets[index]!;
    const path = `/site/candidateOutlets/${index}`;
    const base = { at: outlet.id, source: 'Geometry; least fall 0.5 %, check L4' };
    const needed = symbol('z_n', 'neededLevel', answer.neededLevel, 'level', `/results/gravity/${index}/neededLevel`);
    return [
      working({
        ...base, result: `/results/gravity/${index}/neededLevel`, formula: 'z_n = z_c - S*L', value: answer.neededLevel, unit: 'level', symbols: [
          symbol('z_c', 'collectorInvert', outlet.collectorInvert, 'level', `${path}/collectorInvert`), symbol('S', 'minimumFall', MINIMUM_FALL, 'slope'),
          symbol('L', 'length', outlet.distance, 'length', `${path}/distance`),
        ],
      }),
      working({
        ...base, result: `/results/gravity/${index}/shortfall`, formula: 'h = z_o + t - z_n', value: answer.shortfall, unit: 'relative', symbols: [
          symbol('z_o', 'outletLevel', outlet.level, 'level', `${path}/level`), symbol('t', 'tailwater', outlet.tailwater, 'length', `${path}/tailwater`), needed,
        ], tolerance: 1e-6,
      }),
      working({
        ...base, result: `/results/gravity/${index}/shortfallWithMargin`, formula: 'h_m = h + m', value: answer.shortfallWithMargin, unit: 'relative', symbols: [
          symbol('h', 'shortfall', answer.shortfall, 'relative', `/results/gravity/${index}/shortfall`), symbol('m', 'outletMargin', OUTLET_MARGIN, 'height'),
        ], tolerance: 1e-6,
      }),
    ];
  });
}

/** Frustum sum over the stage-area pairs up to a level, as one formula. */
function frustums(stages: readonly StageArea[], level: number, path: string): { readonly formula: string; readonly symbols: WorkingSymbol[] } {
  const curve = stageCurve(stages);
  const below = stages.filter((stage) => stage.level < level);
  const points = [...below.map((stage, index) => ({ ...stage, from: `${path}/${index}` })), { level, area: areaAtLevel(curve, level), from: null }];
  const symbols = points.flatMap((point, index) => [
    symbol(`z_${index}`, 'stageLevel', point.level, 'level', point.from === null ? null : `${point.from}/level`),
    symbol(`A_${index}`, 'stageArea', point.area, 'area', point.from === null ? null : `${point.from}/area`),
  ]);
  const terms = points.slice(1).map((_, index) => {
    const [a, b] = [index, index + 1];
    return `(z_${b} - z_${a})/3*(A_${a} + sqrt(A_${a}*A_${b}) + A_${b})`;
  });
  return { formula: terms.length === 0 ? '0*A_0' : terms.join(' + '), symbols };
}

export function lowSpotWorkings({ document, results }: WorkingInput): Working[] {
  return results.lowSpots.flatMap((item, index) => {
    const spot = document.site.lowSpots[index]!;
    const path = `/site/lowSpots/${index}/stageArea`;
    const sill = document.site.sills.filter((one) => one.lowSpot === spot.id).reduce((low, one) => Math.min(low, one.level), spot.rimLevel);
    const source = 'Volume of a frustum between two levels, geometry; the area between two levels goes with the square of its root';
    const make = (field: 'volumeToSill' | 'volumeToRim', level: number): Working => {
      const { formula, symbols } = frustums(spot.stageArea, level, path);
      return working({ result: `/results/lowSpots/${index}/${field}`, at: spot.id, formula: `V = ${formula}`, symbols, value: item[field], unit: 'volume', source });
    };
    return [make('volumeToSill', sill), make('volumeToRim', spot.rimLevel)];
  });
}

export function existingDrainWorkings({ document, results }: WorkingInput): Working[] {
  return results.existingDrains.flatMap((item, index) => {
    if (item.backedUpVolume === null || item.blindLength === null) return [];
    const drain = document.site.existingDrains[index]!;
    const path = `/site/existingDrains/${index}`;
    return [
      working({
        result: `/results/existingDrains/${index}/backedUpVolume`, at: drain.id, formula: 'V = Q*t', value: item.backedUpVolume, unit: 'volume',
        source: 'Hose test, common practice', symbols: [
          symbol('Q', 'hoseFlow', drain.hoseFlow, 'flow', `${path}/hoseFlow`), symbol('t', 'backedUpAfter', drain.backedUpAfter ?? 0, 'seconds', `${path}/backedUpAfter`),
        ],
      }),
      working({
        result: `/results/existingDrains/${index}/blindLength`, at: drain.id, formula: 'L = V/(pi/4*D^2)', value: item.blindLength, unit: 'length', source: 'Volume of a cylinder', symbols: [
          symbol('V', 'backedUpVolume', item.backedUpVolume, 'volume', `/results/existingDrains/${index}/backedUpVolume`),
          symbol('pi', 'pi', PI, 'number'), symbol('D', 'drainDiameter', drain.diameter, 'diameter', `${path}/diameter`),
        ],
      }),
    ];
  });
}
