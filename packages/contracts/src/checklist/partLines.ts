import type { Part } from '@yardfall/calc';
import { inch, there } from './measures.ts';
import type { Measure, Subject, TextParams } from './types.ts';

/** How far a blade reaches past the slab. Common practice. */
export const beyond = 2 * inch;

/** One line of the parts check: what is looked at, at which part, and what the design says of it. */
interface Line {
  readonly name: string;
  readonly part: string | null;
  readonly called: string;
  /** A figure [m], a word of the design, or the code of one. */
  readonly is: string | number;
}

function linesOf(part: Part): readonly Line[] {
  const line = (name: string, is: Line['is']): Line => ({ name, part: part.id, called: part.name, is });
  switch (part.kind) {
    case 'pump': return [line('pumpCurve', part.curveName)];
    case 'basin': return [line('basinSize', part.diameter), line('floatKind', `checklists.float.${part.floatKind}`)];
    case 'checkValve': return part.present ? [line('valveKind', '')] : [];
    case 'dischargeLine': return [line('lineSize', part.nominal)];
    default: return [];
  }
}

function lines({ document: { system, construction: { slabCuts } } }: Subject): readonly Line[] {
  const deepest = Math.max(...slabCuts.map(({ thickness }) => thickness));
  return [
    ...system.parts.flatMap(linesOf), { name: 'couplings', part: null, called: '', is: '' },
    ...(slabCuts.length > 0 ? [{ name: 'blades', part: null, called: '', is: deepest + beyond }] : []),
  ];
}

const nameOf = ({ name, part }: Line): string => (part === null ? name : `${name}:${part}`);

/** Each line of the pallet by itself: one that is wrong is a failure of its own. */
export function partLines(subject: Subject): readonly Measure[] {
  return lines(subject).map((line) => there(nameOf(line)));
}

/** What each line is called and what the design says of it. */
export function partFigures(subject: Subject): TextParams {
  return Object.fromEntries(lines(subject).flatMap((line) => [
    ...(line.part === null ? [] : [[`at:${line.part}`, line.called]]), ...(line.is === '' ? [] : [[`is:${nameOf(line)}`, line.is]]),
  ]));
}
