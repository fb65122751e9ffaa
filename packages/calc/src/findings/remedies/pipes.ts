import { FOOT } from '../../common/constants.ts';
import type { DesignDocument, Pipe } from '../../document/document.ts';
import { pipeResults } from '../../evaluate/gravityParts.ts';
import { selfCleansingSlope } from '../../pipe/selfCleansing.ts';
import type { Remedy } from '../../results/results.ts';
import { partById, pathFrom } from '../../routing/pathParts.ts';
import { judge } from '../limit.ts';
import type { Limits } from '../overrides.ts';
import { fieldsOf, firstThat, remedyOf, setFields } from '../patch.ts';
import { followDown } from './follow.ts';
import { roundDown, roundUp } from './round.ts';

/** Nominal sizes of drain pipe, 3 to 12 in [m]. */
export const pipeSizes: readonly number[] = [0.0762, 0.1016, 0.1524, 0.2032, 0.254, 0.3048];

/** The lower end of a pipe laid to a fall, and all that must follow downstream. Null when the outlet does not let it. */
export function steeperPipe(document: DesignDocument, pipe: Pipe, slope: number, limits: Limits): Remedy | null {
  const level = roundDown(pipe.invertUp - slope * pipe.length);
  if (level >= pipe.invertDown) return null;
  const rest = followDown(document, partById(document, pipe.drainsTo), level, limits);
  if (rest === null) return null;
  return remedyOf('remedy.lowerPipeEnd', { pipe: pipe.name, slope, level }, [...fieldsOf(document, pipe, { invertDown: level }), ...rest]);
}

/** The fall at which the pipe cleans itself. */
export function cleansingFall(document: DesignDocument, pipe: Pipe, limits: Limits): Remedy | null {
  const slope = selfCleansingSlope(pipe.diameter, limits.G3.pass * 1.0001, pipe.roughness);
  return steeperPipe(document, pipe, Math.max(slope, limits.G1.pass), limits);
}

/** The first size that carries the design flow well below full; narrower pipes downstream grow with it. */
export function largerPipe(document: DesignDocument, pipe: Pipe, limits: Limits): Remedy | null {
  const candidates = pipeSizes.filter((size) => size > pipe.diameter + 1e-4).map((diameter) => {
    const narrower = pathFrom(document, pipe.id).filter((part): part is Pipe => part.kind === 'pipe' && part.diameter < diameter - 1e-4);
    return remedyOf('remedy.largerPipe', { pipe: pipe.name, diameter }, narrower.flatMap((part) => fieldsOf(document, part, { diameter })));
  });
  return firstThat(document, candidates, (left) => {
    const result = pipeResults(left).find(({ part }) => part === pipe.id);
    return result !== undefined && judge(result.share, limits.G2) === 'pass';
  });
}

/** Both ends lower until the cover is there, with all that must follow. */
export function deeperPipe(document: DesignDocument, pipe: Pipe, cover: number, limits: Limits): Remedy | null {
  const drop = roundUp(cover - pipe.coverMin);
  const [invertUp, invertDown] = [pipe.invertUp - drop, pipe.invertDown - drop];
  const rest = followDown(document, partById(document, pipe.drainsTo), invertDown, limits);
  const params = { pipe: pipe.name, cover, drop };
  if (rest !== null) return remedyOf('remedy.deeperPipe', params, [...fieldsOf(document, pipe, { invertUp, invertDown, coverMin: cover }), ...rest]);
  const enough = (invertUp - pipe.invertDown) / pipe.length >= limits.G1.pass;
  return enough ? remedyOf('remedy.deeperPipe', params, fieldsOf(document, pipe, { invertUp, coverMin: cover })) : null;
}

/** A cleanout at the start, at each turn over 45 degrees, and one every so often. */
export function cleanoutsNeeded(pipe: Pipe, limits: Limits): number {
  const bySpacing = -Math.floor(-(pipe.length - 0.01 * FOOT) / limits.G5.pass);
  return Math.max(1 + pipe.bends90, bySpacing);
}

export function addCleanouts(document: DesignDocument, pipe: Pipe, limits: Limits): Remedy {
  const count = Math.max(pipe.cleanouts, cleanoutsNeeded(pipe, limits));
  return setFields(document, pipe, { cleanouts: count }, 'remedy.addCleanout', { pipe: pipe.name, count });
}

/** Manning n of smooth plastic pipe, aged. Source: common tables, 0.009 to 0.013. */
const smoothRoughness = 0.013;

export function smoothPipe(document: DesignDocument, pipe: Pipe): Remedy {
  return setFields(document, pipe, { material: 'smoothSolid', roughness: Math.min(pipe.roughness, smoothRoughness) }, 'remedy.smoothPipe', { pipe: pipe.name });
}

export function bendsOf45(document: DesignDocument, pipe: Pipe): Remedy {
  return setFields(document, pipe, { bends90: 0, bends45: pipe.bends45 + 2 * pipe.bends90 }, 'remedy.two45s', { pipe: pipe.name, count: 2 * pipe.bends90 });
}

/** Starts a gravity run higher, as high as what drains into it allows, until it has its fall; null when that is not enough. */
export function higherPipe(document: DesignDocument, pipe: Pipe, level: number): Remedy | null {
  const above = document.system.parts.filter(({ drainsTo }) => drainsTo === pipe.id);
  const highest = above.reduce((low, part) => Math.min(low, part.kind === 'channel' || part.kind === 'pipe' ? part.invertDown : part.kind === 'catchBasin' ? part.invertOut : low), Infinity);
  const invertUp = roundUp(level);
  if (invertUp > highest + 1e-9 || invertUp <= pipe.invertUp) return null;
  return setFields(document, pipe, { invertUp }, 'remedy.higherPipe', { pipe: pipe.name, level: invertUp });
}
