import type { Basin, DesignDocument, Part, Pipe } from '../../document/document.ts';
import { partById } from '../../routing/pathParts.ts';
import type { Limits } from '../overrides.ts';
import { fieldsOf, type Step } from '../patch.ts';
import { deeperBasin } from './basin.ts';
import { roundDown } from './round.ts';

const speck = 1e-9;

function pipeFollows(document: DesignDocument, pipe: Pipe, level: number, limits: Limits): Step[] | null {
  if (pipe.invertUp <= level + speck) return [];
  if ((level - pipe.invertDown) / pipe.length >= limits.G1.pass - speck) return fieldsOf(document, pipe, { invertUp: level });
  const lower = roundDown(pipe.invertDown - (pipe.invertUp - level));
  const rest = followDown(document, partById(document, pipe.drainsTo), lower, limits);
  return rest === null ? null : [...fieldsOf(document, pipe, { invertUp: level, invertDown: lower }), ...rest];
}

function basinFollows(document: DesignDocument, basin: Basin, level: number, limits: Limits): Step[] | null {
  if (basin.inletInvert <= level + speck) return [];
  const tooHigh = Math.max(basin.onLevel - (level - limits.B4.pass), basin.alarmLevel - level);
  const inlet = fieldsOf(document, basin, { inletInvert: level });
  if (tooHigh <= speck) return inlet;
  const deeper = deeperBasin(document, basin, tooHigh, limits);
  return deeper === null ? null : [...inlet, ...deeper];
}

/**
 * What must follow downstream when water reaches `part` at a lower level: pipes keep their fall, boxes and basins go deeper.
 * Null when it cannot follow, because the outlet stays where it is.
 */
export function followDown(document: DesignDocument, part: Part | undefined, level: number, limits: Limits): Step[] | null {
  if (part === undefined) return [];
  switch (part.kind) {
    case 'pipe': return pipeFollows(document, part, level, limits);
    case 'basin': return basinFollows(document, part, level, limits);
    case 'cleanout': return followDown(document, partById(document, part.drainsTo), level, limits);
    case 'outlet': return part.level <= level + speck ? [] : null;
    case 'catchBasin': {
      if (part.invertOut <= level + speck) return [];
      const rest = followDown(document, partById(document, part.drainsTo), level, limits);
      return rest === null ? null : [...fieldsOf(document, part, { invertOut: level }), ...rest];
    }
    default: return [];
  }
}
