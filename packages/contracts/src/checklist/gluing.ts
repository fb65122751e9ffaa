import { coldest, publishedCure, type Cure } from './cure.ts';
import { atLeast, hour, inch, noted } from './measures.ts';
import type { Measure, Subject } from './types.ts';

/** What is written of joints that are glued: how warm it is, and how long ago the last of them was. */
export function gluing(): readonly Measure[] {
  return [atLeast('temperature', 'number', coldest, 70), noted('cured', 'minutes', 4 * hour)];
}

/** Of the largest line that a pump pushes through; 2 in where none is drawn yet. */
export function cureOfLine({ document }: Subject): Cure {
  const inside = document.system.parts.flatMap((part) => (part.kind === 'dischargeLine' ? [part.innerDiameter] : []));
  return publishedCure(inside.length === 0 ? 2 * inch : Math.max(...inside));
}
