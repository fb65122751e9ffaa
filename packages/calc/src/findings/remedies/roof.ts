import type { DesignDocument, Gutter, RoofLine } from '../../document/document.ts';
import { leaderCapacity } from '../../gutter/verticalLeader.ts';
import type { Remedy } from '../../results/results.ts';
import { gutterCapacity } from '../../routing/inflow.ts';
import { partById } from '../../routing/pathParts.ts';
import { judge } from '../limit.ts';
import type { Limits } from '../overrides.ts';
import { fieldsOf, firstThat, remedyOf, setFields, type Step } from '../patch.ts';
import { pipeSizes } from './pipes.ts';

/** Gutters of the trade, width and depth [m]. Source: common practice, 5 to 8 in box gutters. */
const gutterSizes: readonly (readonly [width: number, depth: number])[] = [[0.127, 0.0889], [0.1524, 0.1016], [0.1778, 0.127], [0.2032, 0.1524]];

/** A gutter and leaders that carry the design flow with the margin; null when no usual size does. */
export function largerGutter(document: DesignDocument, gutter: Gutter, demand: number, limits: Limits): Remedy | null {
  const needed = demand * limits.D2.pass;
  const sizes: readonly (readonly [number, number])[] = [[gutter.width, gutter.depth], ...gutterSizes.filter(([width, depth]) => width > gutter.width && depth > gutter.depth)];
  const size = sizes.find(([width, depth]) => gutterCapacity({ ...gutter, width, depth }) >= needed);
  if (size === undefined) return null;
  const [width, depth] = size;
  const steps: Step[] = width === gutter.width ? [] : fieldsOf(document, gutter, { width, depth });
  const leader = partById(document, gutter.drainsTo);
  const count = leader?.kind === 'leader' ? Math.max(leader.count, -Math.floor(-needed / leaderCapacity(leader.diameter))) : 0;
  const more = leader?.kind === 'leader' && count > leader.count ? fieldsOf(document, leader, { count }) : [];
  return remedyOf('remedy.largerGutter', { gutter: gutter.name, width, count }, [...steps, ...more]);
}

/** The first size of a sealed roof line that keeps the water below its lowest open joint. */
export function largerRoofLine(document: DesignDocument, line: RoofLine, limits: Limits, spareOf: (left: DesignDocument, line: RoofLine) => number): Remedy | null {
  const candidates = pipeSizes.filter((size) => size > line.diameter + 1e-4)
    .map((diameter) => setFields(document, line, { diameter }, 'remedy.largerRoofLine', { line: line.name, diameter }));
  return firstThat(document, candidates, (left) => {
    const larger = partById(left, line.id);
    return larger?.kind === 'roofLine' && judge(spareOf(left, larger), limits.D2Head) === 'pass';
  });
}
