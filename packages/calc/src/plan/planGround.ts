import type { Site } from '../document/document.ts';
import type { SurveyedSite } from '../surface/survey.ts';

/** What the surface of a site is made of: its spot levels, breaklines and walls, and the walls and houses that are drawn on its plan. */
export function planGround(site: Site): SurveyedSite {
  const drawn = (site.plan?.shapes ?? []).filter(({ use }) => use === 'wall' || use === 'house');
  const walls = drawn.map(({ id, kind, points }) => ({ id, points: kind === 'area' ? [...points, points[0]!] : points }));
  return { spotLevels: site.spotLevels, breaklines: site.breaklines, walls: [...site.walls, ...walls] };
}
