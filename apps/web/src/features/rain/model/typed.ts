import type { RainTable } from '@yardfall/calc';

export const typedDurations = [300, 600, 900, 1800, 3600, 7200, 10_800, 21_600, 43_200, 86_400] as const;
export const typedPeriods = [2, 10, 25, 100] as const;

/**
 * A table as it is typed: one line a duration, depths for 2, 10, 25 and 100 years in the reader's unit.
 * Null with the number of the first line that is not read.
 */
export function readTyped(text: string, name: string, source: string, millimetres: number): { readonly table: RainTable } | { readonly line: number } {
  const lines = text.split('\n').map((line) => line.trim()).filter(Boolean);
  const depths: number[][] = [];
  for (const [at, line] of lines.entries()) {
    const figures = line.split(/[\s,;|]+/).map(Number);
    if (figures.length !== typedPeriods.length || figures.some((figure) => !Number.isFinite(figure) || figure <= 0)) return { line: at + 1 };
    depths.push(figures.map((figure) => figure * millimetres));
  }
  if (depths.length < 2 || depths.length > typedDurations.length) return { line: lines.length };
  return {
    table: {
      name, source, illustrative: false, series: 'partialDuration', durations: typedDurations.slice(0, depths.length), returnPeriods: [...typedPeriods], depths, lower: null, upper: null,
    },
  };
}
