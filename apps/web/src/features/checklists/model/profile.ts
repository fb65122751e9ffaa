import { builtProfile, fullPipe, type BuiltProfile, type DesignDocument, type Evaluation, type Pipe, type PipeShot } from '@yardfall/calc';
import { jointAt, lineOf, reachesDown, reachesUp, type LaidLine, type Requirement } from '@yardfall/contracts';

/** A row of the form: what is typed so far of one shot. */
export interface ShotRow {
  readonly at: number | null;
  readonly level: number | null;
}

/** What the rows say: whole shots in order, or why they say nothing yet. */
export type ReadRows = { readonly state: 'whole'; readonly shots: readonly PipeShot[] } | { readonly state: 'few' | 'order' };

export function readRows(rows: readonly ShotRow[]): ReadRows {
  const shots = rows.flatMap(({ at, level }) => (at === null || level === null ? [] : [{ at, level }]));
  if (shots.length < 2) return { state: 'few' };
  return shots.every(({ at }, i) => i === 0 || at > (shots[i - 1]?.at ?? at)) ? { state: 'whole', shots } : { state: 'order' };
}

/** Both ends as designed long, and every joint between them. */
export function firstRows(pipe: Pipe, { measures }: Pick<Requirement, 'measures'>): ShotRow[] {
  const joints = measures.flatMap(({ name }) => (name.startsWith('joint:') ? [name] : []));
  const line: LaidLine = { length: pipe.length, up: pipe.invertUp, down: pipe.invertDown, joints: joints.length };
  return [0, ...joints.flatMap((name) => jointAt(line, name) ?? []), pipe.length].map((at) => ({ at, level: null }));
}

/** Where along the pipe a row stands, in the words of the form. */
export function placeOf(rows: readonly ShotRow[], n: number): 'shotUp' | 'shotDown' | 'shotJoint' {
  return n === 0 ? 'shotUp' : n === rows.length - 1 ? 'shotDown' : 'shotJoint';
}

/** The shots reach from end to end, so that the pipe can be judged. */
export function isWholePipe(requirement: Pick<Requirement, 'measures' | 'params'>, shots: readonly PipeShot[]): boolean {
  const line = lineOf(requirement);
  return line === null || (reachesUp(line, [...shots]) && reachesDown(line, [...shots]));
}

/** A new shot goes before the last row, which is the lower end. */
export function withRow(rows: readonly ShotRow[]): ShotRow[] {
  return [...rows.slice(0, -1), { at: null, level: null }, ...rows.slice(-1)];
}

/** Level of the designed invert at a place [m]; beyond an end the line goes on. */
export function designedAt({ invertUp, invertDown, length }: Pipe, at: number): number {
  return length > 0 ? invertUp + ((invertDown - invertUp) * at) / length : invertUp;
}

export interface ProfileVerdict {
  readonly built: BuiltProfile;
  /** Full flow of the pipe as designed [m3/s]; 0 where the design has it flat. */
  readonly designed: number;
  readonly least: number;
}

/** The inverts against the fall that the step asks for. */
export function judgeProfile(pipe: Pipe, shots: readonly PipeShot[], { measures }: Pick<Requirement, 'measures'>): ProfileVerdict {
  const least = measures.find(({ name }) => name === 'slope')?.min ?? leastSlope;
  const slope = pipe.length > 0 ? (pipe.invertUp - pipe.invertDown) / pipe.length : 0;
  return { built: builtProfile(shots, pipe.diameter, pipe.roughness, least), designed: slope > 0 ? fullPipe({ diameter: pipe.diameter, slope, roughness: pipe.roughness }).flow : 0, least };
}

/** 1/16 in per foot. Common practice. */
const leastSlope = 1 / 192;

export interface Room {
  readonly sill: string;
  readonly years: number;
  readonly built: number;
  readonly designed: number;
}

/** Room below each sill in the designed storm, as built and as designed [m]. */
export function roomBeside({ site, rain }: DesignDocument, designed: Evaluation | null, built: Evaluation | null): Room[] {
  const years = rain.designReturnPeriod;
  return site.sills.flatMap(({ id, name }) => {
    const [before, now] = [designed, built].map((one) => one?.results.freeboards.find(({ sill, returnPeriod }) => sill === id && returnPeriod === years)?.onTwin);
    return before === undefined || now === undefined ? [] : [{ sill: name, years, built: now, designed: before }];
  });
}
