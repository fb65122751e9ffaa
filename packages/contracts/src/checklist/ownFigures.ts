import { z } from 'zod';
import { text } from '../common.ts';
import { itemTemplates } from './templates.ts';
import type { ItemTemplate, Measure, Subject } from './types.ts';

const limit = z.number().min(-1e6).max(1e6).nullable();

/** A limit of the company's own for one figure of a step; null leaves that side as it is built in. */
export const OwnFigure = z.strictObject({ measure: text(40, 1), min: limit, max: limit }).meta({ id: 'OwnFigure' });
export type OwnFigure = z.infer<typeof OwnFigure>;

/** Nothing of a design may be read through it. */
const noDesign = /* @__PURE__ */ new Proxy({}, { get: () => { throw new RangeError('these figures come from the design'); } }) as Subject;

function measuresOf({ measures }: ItemTemplate): readonly Measure[] {
  try {
    return measures(noDesign);
  } catch (error) {
    if (error instanceof RangeError) return [];
    throw error;
  }
}

/** The figures of a step whose limits are the same on every job, with these limits: for each of them a company may have its own. */
export function fixedFigures(id: string): readonly Measure[] {
  const template = itemTemplates.find((one) => one.id === id);
  return template === undefined ? [] : measuresOf(template).filter(({ min, max, quantity }) => quantity !== 'check' && (min !== null || max !== null));
}

/** Whether a limit of one's own fits the figure: it is known, has that side, and leaves room between its sides. */
export function fits(id: string, own: OwnFigure): boolean {
  const measure = fixedFigures(id).find(({ name }) => name === own.measure);
  if (measure === undefined || (own.min !== null && measure.min === null) || (own.max !== null && measure.max === null)) return false;
  const { min, max } = limited(measure, [own]);
  return min === null || max === null || min < max;
}

/** Whether it lets more pass than is built in. */
export function isWider(id: string, own: OwnFigure): boolean {
  const measure = fixedFigures(id).find(({ name }) => name === own.measure);
  return measure !== undefined && ((own.min !== null && measure.min !== null && own.min < measure.min) || (own.max !== null && measure.max !== null && own.max > measure.max));
}

/** A figure with the company's own limits; what was designed stays between them. */
export function limited(measure: Measure, own: readonly OwnFigure[]): Measure {
  const mine = own.find((one) => one.measure === measure.name);
  if (mine === undefined) return measure;
  const [min, max] = [mine.min ?? measure.min, mine.max ?? measure.max];
  return { ...measure, min, max, target: Math.min(Math.max(measure.target, min ?? -Infinity), max ?? Infinity) };
}
