import type { DesignDocument, PlanShape } from '../document/document.ts';
import { outlineArea, runLength } from './geometry.ts';

/** One figure of the document that the plan measures. `path` leads to it as an edit of a draft does. */
export interface PlanFigure {
  readonly shape: string;
  readonly of: string;
  readonly quantity: 'area' | 'length';
  readonly path: readonly string[];
  /** What is drawn, and what the document says [m2 or m]. */
  readonly drawn: number;
  readonly stated: number;
}

/** Measures are taken to a tenth of a millimetre and to a square centimetre: no finer than a hand draws. */
const lengthStep = 1e-4;
const areaStep = 1e-4;
const rounded = (value: number, step: number): number => Math.floor(value / step + 0.5) * step;

/** Area of an outline to the square centimetre [m2], or length of a run to a tenth of a millimetre [m]; 0 for a place. */
export function measureOf({ kind, points }: PlanShape): number {
  if (kind === 'area') return rounded(outlineArea(points), areaStep);
  return kind === 'line' ? rounded(runLength(points), lengthStep) : 0;
}

function figureOf(document: DesignDocument, shape: PlanShape): Omit<PlanFigure, 'shape' | 'of' | 'drawn'> | null {
  if (shape.use === 'lot') return { quantity: 'area', path: ['site', 'lotArea'], stated: document.site.lotArea ?? 0 };
  if (shape.of === null) return null;
  if (shape.kind === 'area') {
    const catchment = document.site.catchments.find(({ id }) => id === shape.of);
    return catchment === undefined ? null : { quantity: 'area', path: ['site', 'catchments', `@${catchment.id}`, 'area'], stated: catchment.area };
  }
  const part = document.system.parts.find(({ id }) => id === shape.of);
  return part !== undefined && shape.kind === 'line' && 'length' in part ? { quantity: 'length', path: ['system', 'parts', `@${part.id}`, 'length'], stated: part.length } : null;
}

/** Every figure that a shape is tied to: areas of catchments and of the lot, lengths of parts. */
export function planFigures(document: DesignDocument): PlanFigure[] {
  return (document.site.plan?.shapes ?? []).flatMap((shape) => {
    const figure = figureOf(document, shape);
    return figure === null ? [] : [{ ...figure, shape: shape.id, of: shape.of ?? 'lot', drawn: measureOf(shape) }];
  });
}
