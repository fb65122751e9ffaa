import { planFigures, type Catchment, type DesignDocument, type ListedPoint, type Plan, type PlanPicture, type PlanShape, type PlanUse, type SpotLevel, type Utility } from '@yardfall/calc';
import { applyOperations, type DraftOperation } from '@yardfall/contracts';
import { scalePlan } from '@yardfall/drawing';
import { newCatchment, surfaceDefaults } from '../catchments.ts';
import { freeId } from '../defaults.ts';

export const emptyPlan: Plan = { picture: null, north: null, shapes: [] };

const shapesPath = ['site', 'plan', 'shapes'];
const replace = (path: readonly string[], value: unknown): DraftOperation => ({ kind: 'replace', path: [...path], value: value as never });

/** The edits together with the figures that they change: what is tied to a shape measures what the shape measures. */
export function withFigures(document: DesignDocument, operations: readonly DraftOperation[]): DraftOperation[] {
  const after = applyOperations(document, operations);
  const touched = new Set(operations.flatMap((operation) => (operation.kind === 'connect' ? [] : [shapeOf(operation)])));
  const figures = planFigures(after).filter(({ shape, drawn, stated }) => touched.has(shape) && drawn > 0 && drawn !== stated);
  return [...operations, ...figures.map(({ path, drawn }) => replace(path, drawn))];
}

function shapeOf(operation: Exclude<DraftOperation, { kind: 'connect' }>): string {
  if (operation.kind === 'add') return (operation.value as { readonly id?: string }).id ?? '';
  return operation.path.find((key) => key.startsWith('@'))?.slice(1) ?? '';
}

export function addShape(document: DesignDocument, shape: PlanShape): DraftOperation[] {
  return withFigures(document, [{ kind: 'add', path: [...shapesPath, '-'], value: shape as never }]);
}

export function changeShape(document: DesignDocument, shape: PlanShape): DraftOperation[] {
  return withFigures(document, [replace([...shapesPath, `@${shape.id}`], shape)]);
}

/** The document while a shape is under the hand. */
export function withShape(document: DesignDocument, live: PlanShape): DesignDocument {
  const { plan } = document.site;
  return plan === null ? document : { ...document, site: { ...document.site, plan: { ...plan, shapes: plan.shapes.map((shape) => (shape.id === live.id ? live : shape)) } } };
}

export function removeShape(shape: PlanShape): DraftOperation[] {
  return [{ kind: 'remove', path: [...shapesPath, `@${shape.id}`] }];
}

const surfaceUses: readonly PlanUse[] = ['roof', 'paving', 'lawn', 'bed', 'gravel', 'permeablePaving', 'pool', 'neighbour'];

export const isSurface = (shape: PlanShape): boolean => shape.kind === 'area' && surfaceUses.includes(shape.use);

/** A surface of the design made from an outline, which measures it from then on. */
export function catchmentFrom(document: DesignDocument, shape: PlanShape): DraftOperation[] {
  const surface = shape.use as Catchment['surface'];
  const catchment: Catchment = { ...newCatchment(document, shape.name), surface, ...surfaceDefaults(surface) };
  const added: DraftOperation = { kind: 'add', path: ['site', 'catchments', '-'], value: catchment as never };
  const after = applyOperations(document, [added]);
  return [added, ...changeShape(after, { ...shape, of: catchment.id })];
}

/** A buried line of the design made from a run of the plan; its strip is dug by hand from then on. */
export function utilityFrom(document: DesignDocument, shape: PlanShape, tolerance: number): DraftOperation[] {
  const utility: Utility = { id: freeId(document.site.utilities, 'U'), kind: 'private', name: shape.name, station: null, level: null, tolerance };
  const added: DraftOperation = { kind: 'add', path: ['site', 'utilities', '-'], value: utility as never };
  return [added, ...changeShape(applyOperations(document, [added]), { ...shape, of: utility.id })];
}

export function changeUtility(id: string, field: 'kind' | 'tolerance' | 'level', value: string | number | null): DraftOperation[] {
  return [replace(['site', 'utilities', `@${id}`, field], value)];
}

/** A spot level at a place: a new one, or one of the level book that had no place yet. */
export function putSpot(document: DesignDocument, spot: SpotLevel): DraftOperation[] {
  const known = document.site.spotLevels.some(({ id }) => id === spot.id);
  return [known ? replace(['site', 'spotLevels', `@${spot.id}`], spot) : { kind: 'add', path: ['site', 'spotLevels', '-'], value: spot as never }];
}

/** Points of a surveyor's list: a spot level of the same name is replaced, the others are added. */
export function putPoints(document: DesignDocument, points: readonly ListedPoint[]): DraftOperation[] {
  const known = new Map(document.site.spotLevels.map((spot) => [spot.name, spot]));
  const taken = [...document.site.spotLevels];
  return points.map(({ point, description, x, y, level }): DraftOperation => {
    const name = [point, description].filter((word) => word !== '').join(' ');
    const before = known.get(name);
    const spot: SpotLevel = { id: before?.id ?? freeId(taken, 'S'), name: name === '' ? freeId(taken, 'S') : name, level, station: before?.station ?? null, position: { x, y } };
    if (before) return replace(['site', 'spotLevels', `@${spot.id}`], spot);
    taken.push(spot);
    return { kind: 'add', path: ['site', 'spotLevels', '-'], value: spot as never };
  });
}

export function setPicture(picture: PlanPicture | null): DraftOperation[] {
  return [replace(['site', 'plan', 'picture'], picture)];
}

/** The picture's known length; what was traced by an earlier one grows or shrinks with it. */
export function tiePicture(document: DesignDocument, plan: Plan, picture: PlanPicture, times: number | null): DraftOperation[] {
  if (times === null || times === 1) return setPicture(picture);
  const { shapes, spots } = scalePlan(plan, document.site.spotLevels, times);
  const moved = shapes.map((shape) => replace([...shapesPath, `@${shape.id}`], shape));
  const placed = spots.filter(({ position }) => position !== null).map((spot) => replace(['site', 'spotLevels', `@${spot.id}`], spot));
  return withFigures(document, [...setPicture(picture), ...moved, ...placed]);
}
