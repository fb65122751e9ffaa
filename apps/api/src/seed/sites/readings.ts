import type { LevelReading } from '@yardfall/contracts';

export const inch = 0.0254;
export const foot = 12 * inch;
export const gallon = 231 * inch ** 3;

type Row = readonly [point: string, backsight: number | null, intermediate: number | null, foresight: number | null, note: string];

/** Rows of a field book in feet. The ids stand fast, so that the same book has the same bytes every time. */
export function readingsOf(book: string, rows: readonly Row[]): LevelReading[] {
  const metres = (feet: number | null) => (feet === null ? null : feet * foot);
  return rows.map(([point, backsight, intermediate, foresight, note], index) => ({
    id: `01930000-0000-7000-8000-0000000${book}${String(index + 100)}`,
    point, backsight: metres(backsight), intermediate: metres(intermediate), foresight: metres(foresight), direct: null, note,
  }));
}
