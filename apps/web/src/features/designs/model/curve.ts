import type { CurvePoint } from '@yardfall/calc';

/** A gallon a minute and a foot in SI; a liter a second and a meter for the other switch. */
const sizes = { us: { flow: 231 * 0.0254 * 0.0254 * 0.0254 / 60, head: 0.3048 }, metric: { flow: 0.001, head: 1 } } as const;

/** Pump curve points as the datasheet gives them, one `flow@head` each, separated by commas, spaces or lines. */
export function writeCurve(points: readonly CurvePoint[], units: 'us' | 'metric'): string {
  const size = sizes[units];
  return points.map((p) => `${tidy(p.flow / size.flow)}@${tidy(p.head / size.head)}`).join(', ');
}

/** Null when a point is not read or fewer than two are there. Flow rises in the result. */
export function readCurve(text: string, units: 'us' | 'metric'): CurvePoint[] | null {
  const size = sizes[units];
  const points: CurvePoint[] = [];
  for (const word of text.split(/[\s,;]+/).filter(Boolean)) {
    const match = /^(\d*\.?\d+)@(\d*\.?\d+)$/.exec(word);
    if (!match) return null;
    points.push({ flow: Number(match[1]) * size.flow, head: Number(match[2]) * size.head });
  }
  return points.length < 2 ? null : points.toSorted((a, b) => a.flow - b.flow);
}

function tidy(value: number): string {
  return String(Number(value.toFixed(2)));
}
