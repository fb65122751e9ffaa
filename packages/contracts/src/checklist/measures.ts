import type { Part } from '@yardfall/calc';
import type { Measure, Subject } from './types.ts';

export const inch = 0.0254;
export const foot = 0.3048;
export const minute = 60;
export const hour = 3600;

type Kind = Part['kind'];
type PartOf<K extends Kind> = Extract<Part, { kind: K }>;

/** Measures of an item that stands for one part of this kind; none for any other subject. */
export function of<K extends Kind>(kind: K, measures: (part: PartOf<K>, subject: Subject) => readonly Measure[]) {
  return (subject: Subject): readonly Measure[] => (isKind(subject.part, kind) ? measures(subject.part, subject) : []);
}

function isKind<K extends Kind>(part: Part | null, kind: K): part is PartOf<K> {
  return part?.kind === kind;
}

export function within(name: string, quantity: Measure['quantity'], target: number, tolerance: number): Measure {
  return { name, quantity, target, min: target - tolerance, max: target + tolerance };
}

export function between(name: string, quantity: Measure['quantity'], min: number, max: number, target = (min + max) / 2): Measure {
  return { name, quantity, target, min, max };
}

export function atLeast(name: string, quantity: Measure['quantity'], min: number, target = min): Measure {
  return { name, quantity, target, min, max: null };
}

export function atMost(name: string, quantity: Measure['quantity'], max: number, target = max): Measure {
  return { name, quantity, target, min: null, max };
}

/** It is there and as it should be: 1, and 0 where it is not. */
export function there(name: string): Measure {
  return { name, quantity: 'check', target: 1, min: 1, max: null };
}

/** Written down, with nothing to be judged against. */
export function noted(name: string, quantity: Measure['quantity'], expected = 0): Measure {
  return { name, quantity, target: expected, min: null, max: null };
}

/** The same measures in either of two ways: what was measured in one and is good spares the other. */
export function eitherWay(one: readonly Measure[], other: Measure): readonly Measure[] {
  const [first] = one;
  return first === undefined ? [other] : [...one.map((measure) => ({ ...measure, unless: other.name })), { ...other, unless: first.name }];
}

/** Measures of a part; where several are asked about together, those of each under its name. */
export function atEach(measures: (part: Part) => readonly Measure[]) {
  return ({ part, parts }: Subject): readonly Measure[] =>
    part === null ? parts.flatMap((one) => measures(one).map((measure) => ({ ...measure, name: `${measure.name}:${one.id}` }))) : measures(part);
}
