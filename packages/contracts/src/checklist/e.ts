import type { Pipe } from '@yardfall/calc';
import { atEach, atLeast, atMost, eitherWay, foot, inch, minute, of, within } from './measures.ts';
import { buriedLines } from './traits.ts';
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
    id: 'E2', applies: ['buriedLine'], per: { kinds: buriedLines, together: true }, evidence: ['tick', 'photo', 'value'], photos: 1, params: { from: bedding, to: 4 * inch },
    measures: atEach(() => [atLeast('bedding', 'height', bedding)]),
  }),
  item({ id: 'E3', applies: ['buriedLine'], per: { kinds: ['pipe', 'roofLine'], together: true }, photos: 1, pictures: fittings }),
  item({ id: 'E4', applies: ['cleanout'], photos: 1, pictures: ({ document }) => document.system.parts.reduce((sum, part) => sum + (part.kind === 'cleanout' ? 1 : part.kind === 'pipe' ? part.cleanouts : 0), 0) }),
  item({
    id: 'E5', applies: ['sealedLine'], per: { kinds: ['pipe', 'roofLine'] }, holdPoint: 'HP-7', evidence: ['tick', 'photo', 'value'], photos: 1,
    params: { drop: inch / 2, hold: 15 * minute, clear: 30 },
    measures: () => eitherWay([atMost('drop', 'height', inch / 2, 0), atLeast('held', 'minutes', 15 * minute)], atMost('clearing', 'seconds', 30, 0)),
  }),
  item({ id: 'E6', applies: ['buriedLine'], per: { kinds: ['pipe', 'roofLine', 'underdrain'] }, photos: 1, params: { lift: 6 * inch, over: 12 * inch } }),
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

/** Bends that are seen before they are covered. */
function fittings({ part }: Subject): number {
  return part?.kind === 'pipe' || part?.kind === 'roofLine' ? part.bends90 + part.bends45 : 0;
}
