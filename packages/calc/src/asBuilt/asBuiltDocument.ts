import type { DesignDocument, Part, Pipe } from '../document/document.ts';
import { requireShots } from './requireShots.ts';
import type { PipeShot } from './pipeProfile.ts';

/** A level of a part as it was shot: which part, which of its levels, where it is [m]. */
export interface BuiltLevel {
  readonly part: string;
  readonly field: string;
  readonly level: number;
}

/** The inverts of one laid pipe from its upper end. */
export interface BuiltPipe {
  readonly part: string;
  readonly shots: readonly PipeShot[];
}

/**
 * The design with its levels as they were built; a pipe that was shot at more than its ends becomes pipes in series, one for each segment.
 *
 * The routing then meets every hump and every fall. Bends stay in the first segment and cleanouts too, the cover in all.
 * Levels of parts that the document has not are passed over: a build revision may have left them out.
 *
 * @throws CalcProblem for a pipe with fewer than two shots or distances that do not rise
 * Limits: the material, size and joints are those of the design
 * Source: 7.3 of the trade: the model again with the numbers as built
 */
export function asBuiltDocument(document: DesignDocument, levels: readonly BuiltLevel[], pipes: readonly BuiltPipe[]): DesignDocument {
  const taken = new Set(document.system.parts.map(({ id }) => id));
  const parts = document.system.parts.flatMap((part) => {
    const built = withLevels(part, levels);
    const shot = pipes.find((pipe) => pipe.part === part.id);
    return built.kind === 'pipe' && shot !== undefined ? inSeries(built, shot.shots, taken) : [built];
  });
  return { ...document, system: { ...document.system, parts } };
}

function withLevels(part: Part, levels: readonly BuiltLevel[]): Part {
  const own = levels.filter((level) => level.part === part.id && typeof Reflect.get(part, level.field) === 'number');
  return own.length === 0 ? part : { ...part, ...Object.fromEntries(own.map(({ field, level }) => [field, level])) };
}

/** Ids of the segments; the first keeps the pipe's own, so that what drains to it still does. */
function segmentIds({ id }: Pipe, count: number, taken: ReadonlySet<string>): string[] {
  return Array.from({ length: count }, (_, nth) => {
    let own = nth === 0 ? id : `${id}-${String(nth + 1)}`;
    while (nth > 0 && taken.has(own)) own += 'x';
    return own;
  });
}

function inSeries(pipe: Pipe, shots: readonly PipeShot[], taken: ReadonlySet<string>): Pipe[] {
  requireShots(shots);
  const count = shots.length - 1;
  const ids = segmentIds(pipe, count, taken);
  return ids.map((id, nth): Pipe => {
    const [upper, lower] = [shots[nth]!, shots[nth + 1]!];
    const first = nth === 0;
    return {
      ...pipe, id, name: count === 1 ? pipe.name : `${pipe.name} ${String(nth + 1)}/${String(count)}`,
      length: lower.at - upper.at, invertUp: upper.level, invertDown: lower.level,
      bends90: first ? pipe.bends90 : 0, bends45: first ? pipe.bends45 : 0, cleanouts: first ? pipe.cleanouts : 0,
      drainsTo: ids[nth + 1] ?? pipe.drainsTo,
    };
  });
}
