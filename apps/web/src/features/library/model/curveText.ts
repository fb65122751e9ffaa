import type { CurvePoint } from '@yardfall/calc';
import { clean, unitSizes } from './units.ts';

/** The two columns of a datasheet: flow, then head. */
export const curveUnits = { 'gpm ft': ['gpm', 'ft'], 'L/s m': ['L/s', 'm'], 'L/min m': ['L/min', 'm'], 'm3/h m': ['m3/h', 'm'] } as const;
export type CurveUnits = keyof typeof curveUnits;

export type CurveRead =
  | { readonly ok: true; readonly points: readonly CurvePoint[]; readonly shutOff: number; readonly runOut: number }
  | { readonly ok: false; readonly code: 'library.lineUnread' | 'library.fewPoints' | 'library.noShutOff' | 'library.curveRises'; readonly params: Readonly<Record<string, number>> };

/** Points of a datasheet that are needed to read a curve between them. */
export const leastPoints = 3;

/**
 * Two columns as they are pasted from a datasheet, a table or a sheet: flow and head, separated by blanks, a tab, a comma or a semicolon.
 * A line without a figure is a heading and passed over. Points may stand in either order; they come back with the flow rising.
 */
export function readCurveText(text: string, units: CurveUnits): CurveRead {
  const [flowUnit, headUnit] = curveUnits[units];
  const points: CurvePoint[] = [];
  for (const [at, line] of text.split(/\r?\n/).entries()) {
    if (!/\d/.test(line)) continue;
    const cells = line.trim().split(/[\s;,@|]+/).filter(Boolean);
    const [flow, head] = cells.map(Number);
    if (cells.length !== 2 || flow === undefined || head === undefined || !(flow >= 0) || !(head >= 0)) return { ok: false, code: 'library.lineUnread', params: { line: at + 1 } };
    points.push({ flow: clean(flow * unitSizes.flow[flowUnit]), head: clean(head * unitSizes.head[headUnit]) });
  }
  return judged(points.toSorted((a, b) => a.flow - b.flow || b.head - a.head));
}

function judged(points: readonly CurvePoint[]): CurveRead {
  if (points.length < leastPoints) return { ok: false, code: 'library.fewPoints', params: { count: points.length, least: leastPoints } };
  const [first] = points;
  if (first?.flow !== 0) return { ok: false, code: 'library.noShutOff', params: {} };
  const rising = points.findIndex((point, at) => at > 0 && (point.head >= (points[at - 1]?.head ?? Infinity) || point.flow <= (points[at - 1]?.flow ?? 0)));
  if (rising > 0) return { ok: false, code: 'library.curveRises', params: { point: rising + 1 } };
  return { ok: true, points, shutOff: first.head, runOut: points.at(-1)?.flow ?? 0 };
}

export function writeCurveText(points: readonly CurvePoint[], units: CurveUnits): string {
  const [flowUnit, headUnit] = curveUnits[units];
  const figure = (value: number, size: number): string => String(Number((value / size).toPrecision(6)));
  return points.map(({ flow, head }) => `${figure(flow, unitSizes.flow[flowUnit])}\t${figure(head, unitSizes.head[headUnit])}`).join('\n');
}
