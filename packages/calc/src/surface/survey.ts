import { CalcProblem } from '../common/problem.ts';
import type { Breakline, SpotLevel, Wall } from '../document/document.ts';
import type { Ground } from './surface.ts';
import { triangulateSurface } from './triangulate.ts';

/** The part of a document's site of which the ground is made. */
export interface SurveyedSite {
  readonly spotLevels: readonly Pick<SpotLevel, 'id' | 'level' | 'position'>[];
  readonly breaklines: readonly Pick<Breakline, 'id' | 'points'>[];
  readonly walls: readonly Pick<Wall, 'id' | 'points'>[];
}

/**
 * The surface of a document's site: its spot levels that have a place on the plan, its breaklines and its walls.
 *
 * @param site levels and places [m]
 * Errors: those of triangulateSurface, with the path within the site (spotLevels/3/level, walls/0/points/2)
 * Source: see triangulateSurface
 */
export function triangulateSurvey(site: SurveyedSite): Ground {
  const placed = site.spotLevels.flatMap(({ id, level, position }, index) => (position === null ? [] : [{ index, point: { id, level, x: position.x, y: position.y } }]));
  try {
    return triangulateSurface({ points: placed.map(({ point }) => point), breaklines: site.breaklines, walls: site.walls });
  } catch (error) {
    if (!(error instanceof CalcProblem)) throw error;
    const [list, number, ...rest] = error.path.split('/');
    if (list !== 'points') throw error;
    const index = placed[Number(number)]?.index;
    throw new CalcProblem(error.code, ['spotLevels', ...(index === undefined ? [] : [String(index)]), ...rest].join('/'), error.params);
  }
}
