import { CalcProblem } from '../common/problem.ts';
import { requireNotNegative, requirePositive } from '../common/require.ts';
import { pow } from '../math/pow.ts';

/** A low spot without a survey: its area at the sill and its depth there. */
export interface Dish {
  readonly topArea: number;
  readonly depth: number;
  /** m: 0 upright walls, 1 a bowl (paraboloid), 2 a cone. */
  readonly shape: number;
}

function requireDish(dish: Dish): void {
  requirePositive({ topArea: dish.topArea, depth: dish.depth });
  requireNotNegative({ shape: dish.shape });
}

/**
 * Water surface and volume of a dish-shaped low spot.
 *
 *   A = A_top*(h/d)^m;  V = A_top*d/(m + 1)*(h/d)^(m+1)
 *
 * @param dish area at its depth [m2, m], m
 * @param height h of water over the lowest point [m], 0 to d
 * @returns area [m2] and volume [m3]
 * Limits: throws levels.overDish above its depth
 * Source: geometry; the shape is a guess that a survey replaces
 * Checked against: cone and paraboloid, 1e-12
 */
export function dishAt(dish: Dish, height: number): { readonly area: number; readonly volume: number } {
  requireDish(dish);
  requireNotNegative({ height });
  if (height > dish.depth) throw new CalcProblem('levels.overDish', 'height', { height, depth: dish.depth });
  if (height === 0) return { area: dish.shape === 0 ? dish.topArea : 0, volume: 0 };
  const area = dish.topArea * pow(height / dish.depth, dish.shape);
  return { area, volume: (area * height) / (dish.shape + 1) };
}

/** Height at which a volume stands in a dish [m]; same limits, turned round. */
export function dishHeight(dish: Dish, volume: number): number {
  requireDish(dish);
  requireNotNegative({ volume });
  const most = (dish.topArea * dish.depth) / (dish.shape + 1);
  if (volume > most) throw new CalcProblem('levels.overDish', 'volume', { volume, most });
  return dish.depth * pow(volume / most, 1 / (dish.shape + 1));
}
