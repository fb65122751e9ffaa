import type { FieldFact, Requirement } from '../checklists.ts';
import { foot } from './measures.ts';

type Shots = Extract<FieldFact, { kind: 'profile' }>['shots'];

/** A gravity pipe as it was asked for: how long it is, its inverts, and how many joints are to be shot between them [m]. */
export interface LaidLine {
  readonly length: number;
  readonly up: number;
  readonly down: number;
  readonly joints: number;
}

/** The pipe whose inverts are shot along its whole length; null for a step that asks for none. */
export function lineOf({ measures, params }: Pick<Requirement, 'measures' | 'params'>): LaidLine | null {
  const target = (wanted: string) => measures.find(({ name }) => name === wanted)?.target;
  const [up, down, length] = [target('invertUp'), target('invertDown'), params['length']];
  if (up === undefined || down === undefined || target('slope') === undefined || typeof length !== 'number' || length <= 0) return null;
  return { length, up, down, joints: measures.filter(({ name }) => name.startsWith('joint:')).length };
}

/** Half a stick of 20 ft: from whichever end the sticks are laid, one of their joints lies so near. Ours. */
const jointReach = 10 * foot;
/** How far from the designed end the end of the laid pipe may be. Ours. */
const endReach = 2 * foot;

/** Where a joint is looked for [m from the upper end], evenly along the pipe; null for the name of another measure. */
export function jointAt({ length, joints }: LaidLine, name: string): number | null {
  const [kind, nth] = name.split(':');
  return kind === 'joint' && nth !== undefined ? (length * Number(nth)) / (joints + 1) : null;
}

/** Level of the designed invert [m]. */
export function levelOn({ up, down, length }: LaidLine, at: number): number {
  return up + ((down - up) * at) / length;
}

export function shotsOf(shots: Shots, joint: number): Shots {
  return shots.filter(({ at }) => Math.abs(at - joint) <= jointReach + 1e-9);
}

const reach = ({ length }: LaidLine): number => Math.min(endReach, length / 4);

export function reachesUp(line: LaidLine, shots: Shots): boolean {
  const [first] = shots;
  return first !== undefined && first.at <= reach(line);
}

/** A pipe that was laid longer than it was designed ends where it ends. */
export function reachesDown(line: LaidLine, shots: Shots): boolean {
  const last = shots.at(-1);
  return last !== undefined && last.at >= line.length - reach(line);
}

/** Shots that do not reach an end yet go on as designed from there, so that what is not shot is taken as it was drawn. */
export function withEnds(line: LaidLine, shots: Shots): Shots {
  return [...(reachesUp(line, shots) ? [] : [{ at: 0, level: line.up }]), ...shots, ...(reachesDown(line, shots) ? [] : [{ at: line.length, level: line.down }])];
}
