import { CalcProblem } from '../common/problem.ts';
import { at, requireFinite, requireNotNegative } from '../common/require.ts';

/** A mark of a basin: level over its floor [m] and water that was poured in up to it [m3]. */
export interface BasinMark {
  readonly level: number;
  readonly volume: number;
}

function requireMarks(marks: readonly BasinMark[]): void {
  if (marks.length < 2) throw new CalcProblem('basin.tooFewMarks', 'marks', { count: marks.length });
  marks.forEach((mark, i) => {
    requireFinite({ [`marks/${i}/level`]: mark.level });
    requireNotNegative({ [`marks/${i}/volume`]: mark.volume });
    if (i === 0) return;
    const before = at(marks, i - 1);
    if (mark.level <= before.level || mark.volume <= before.volume) throw new CalcProblem('basin.marksNotRising', `marks/${i}`, { level: mark.level, volume: mark.volume });
  });
}

/** Straight between the pairs around a value; refuses what lies outside, since nothing was poured there. */
function between(marks: readonly BasinMark[], value: number, from: keyof BasinMark, to: keyof BasinMark): number {
  const low = at(marks, 0)[from];
  const high = at(marks, marks.length - 1)[from];
  if (!(value >= low && value <= high)) throw new CalcProblem('basin.outsideMarks', from, { value, low, high });
  let i = 1;
  while (at(marks, i)[from] < value) i += 1;
  const a = at(marks, i - 1);
  const b = at(marks, i);
  return a[to] + ((b[to] - a[to]) * (value - a[from])) / (b[from] - a[from]);
}

/**
 * Volume in a basin at a level, from its calibrated marks.
 *
 * @param marks levels [m] with poured volumes [m3], rising, at least two
 * @param level [m], between the first and the last mark
 * @returns volume [m3], straight between marks
 * Limits: throws basin.outsideMarks beyond them, basin.marksNotRising, basin.tooFewMarks
 * Source: calibration by filling; straight between marks: a taper between two marks an inch apart bends less than 0.1 %
 * Checked against: marks.test.ts, a tapered basin poured by the formula
 */
export function volumeAtMark(marks: readonly BasinMark[], level: number): number {
  requireMarks(marks);
  return between(marks, level, 'level', 'volume');
}

/** Level at which a poured volume stands [m]; same limits and source. */
export function levelAtMark(marks: readonly BasinMark[], volume: number): number {
  requireMarks(marks);
  return between(marks, volume, 'volume', 'level');
}
