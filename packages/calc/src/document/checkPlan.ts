import type { Plan, PlanShape } from './document.ts';
import { DocumentError } from './error.ts';
import { checkEach, checkFields, checkUniqueIds, checkWord } from './fields.ts';
import { pictureRules, planRules, positionRules, shapeRules, tieRules } from './rules.ts';
import { planAreaUses, planLineUses, planPlaceUses } from './types/plan.ts';

const usesOf: Readonly<Record<PlanShape['kind'], readonly string[]>> = { area: planAreaUses, line: planLineUses, place: planPlaceUses };
const leastPoints: Readonly<Record<PlanShape['kind'], number>> = { area: 3, line: 2, place: 1 };
const mostShapes = 300;
const mostPoints = 500;

function checkPicture(picture: NonNullable<Plan['picture']>): void {
  checkFields(picture, pictureRules, '/site/plan/picture');
  if (picture.tie === null) return;
  checkFields(picture.tie, tieRules, '/site/plan/picture/tie');
  checkFields(picture.tie.from, positionRules, '/site/plan/picture/tie/from');
  checkFields(picture.tie.to, positionRules, '/site/plan/picture/tie/to');
  if (picture.tie.from.x === picture.tie.to.x && picture.tie.from.y === picture.tie.to.y) throw new DocumentError('document.notPositive', '/site/plan/picture/tie/to', { value: 0 });
}

function checkShape(shape: PlanShape, path: string): void {
  checkWord(shape.kind, Object.keys(usesOf), `${path}/kind`);
  checkWord(shape.use, usesOf[shape.kind], `${path}/use`);
  const most = shape.kind === 'place' ? 1 : mostPoints;
  if (shape.points.length < leastPoints[shape.kind]) throw new DocumentError('document.tooFew', `${path}/points`, { least: leastPoints[shape.kind] });
  if (shape.points.length > most) throw new DocumentError('document.tooMany', `${path}/points`, { most });
  checkEach(shape.points, positionRules, `${path}/points`);
}

/** The drawn plan can be measured: known kinds, enough places, finite coordinates. What its shapes are tied to may be gone. */
export function checkPlan(plan: Plan | null): void {
  if (plan === null) return;
  checkFields(plan, planRules, '/site/plan');
  if (plan.north !== null && plan.north > 360) throw new DocumentError('document.outOfRange', '/site/plan/north', { low: 0, high: 360 });
  if (plan.picture !== null) checkPicture(plan.picture);
  if (plan.shapes.length > mostShapes) throw new DocumentError('document.tooMany', '/site/plan/shapes', { most: mostShapes });
  checkEach(plan.shapes, shapeRules, '/site/plan/shapes');
  checkUniqueIds(plan.shapes, '/site/plan/shapes');
  plan.shapes.forEach((shape, index) => { checkShape(shape, `/site/plan/shapes/${index}`); });
}
