import type { Pipe } from '@yardfall/calc';
import { atLeast, foot, inch, minute, of, within } from './measures.ts';
import { item } from './types.ts';
import type { Measure, Subject, TextParams } from './types.ts';

const quarter = inch / 4;
const bedding = 2 * inch;
/** Never less than 1/16 in per foot. Common practice. */
const leastSlope = 1 / 192;

/** E. Gravity pipe. Backfill to 12 in over the crown: a municipal plumbing code, section 306. The rest is common practice or ours. */
export const groupE = [
  item({
    id: 'E1', applies: ['gravityPipe'], per: { kinds: ['pipe'] }, holdPoint: 'HP-6', evidence: ['tick', 'photo', 'value'], photos: 1,
    params: { tolerance: quarter, least: leastSlope }, measures: of('pipe', shots), figures: lengthOf,
  }),
  item({
    id: 'E2', applies: ['gravityPipe'], per: { kinds: ['pipe'] }, evidence: ['tick', 'photo', 'value'], photos: 1, params: { from: bedding, to: 4 * inch },
    measures: () => [atLeast('bedding', 'height', bedding)],
  }),
  item({ id: 'E3', applies: ['gravityPipe'], per: { kinds: ['pipe'] }, photos: 1 }),
  item({ id: 'E4', applies: ['cleanout'], photos: 1 }),
  item({
    id: 'E5', applies: ['gravityPipe'], per: { kinds: ['pipe'] }, holdPoint: 'HP-7', photos: 1,
    params: { drop: inch / 2, hold: 15 * minute, clear: 30 },
  }),
  item({ id: 'E6', applies: ['gravityPipe'], per: { kinds: ['pipe'] }, photos: 1, params: { lift: 6 * inch, over: 12 * inch } }),
];

function lengthOf({ part }: Subject): TextParams {
  return part?.kind === 'pipe' ? { length: part.length } : {};
}

/** A shot at each joint: pipe in sticks of 20 ft, evenly laid. Common practice. */
const stick = 20 * foot;
const mostJoints = 12;

/** Both inverts with the joints between, and the fall: as designed less what the two tolerances may take away. */
function shots(pipe: Pipe): readonly Measure[] {
  const fall = pipe.invertUp - pipe.invertDown;
  const slope = pipe.length > 0 ? fall / pipe.length : 0;
  const least = pipe.length > 0 ? Math.max(leastSlope, (fall - 2 * quarter) / pipe.length) : leastSlope;
  const joints = Math.min(Math.max(Math.ceil(pipe.length / stick) - 1, 0), mostJoints);
  const between = Array.from({ length: joints }, (_, n) => within(`joint:${String(n + 1)}`, 'level', pipe.invertUp - (fall * (n + 1)) / (joints + 1), quarter));
  return [
    within('invertUp', 'level', pipe.invertUp, quarter), ...between, within('invertDown', 'level', pipe.invertDown, quarter),
    { name: 'slope', quantity: 'slope', target: slope, min: least, max: null },
  ];
}
