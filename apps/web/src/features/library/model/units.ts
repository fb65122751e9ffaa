/** Thirteen figures hold whatever is typed or pasted, and make a value come back from a file as it went in. */
export const clean = (value: number): number => Number(value.toPrecision(13));

const inch = 0.0254;
const gallonPerMinute = (231 * inch * inch * inch) / 60;

/** Units in which a datasheet or a file may give a value, each with its size in SI. */
export const unitSizes = {
  length: { in: inch, mm: 0.001, ft: 12 * inch, m: 1 },
  area: { sqin: inch * inch, cm2: 0.0001, sqft: 144 * inch * inch, m2: 1 },
  mass: { lb: 0.45359237, kg: 1 },
  flow: { gpm: gallonPerMinute, 'L/s': 0.001, 'L/min': 0.001 / 60, 'm3/h': 1 / 3600 },
  head: { ft: 12 * inch, m: 1 },
} as const;
export type UnitKind = keyof typeof unitSizes;

/** A value in the unit in which it is roundest: what was typed as 4 in is written as 4 in. */
export function roundest(kind: UnitKind, value: number): string {
  const written = Object.entries(unitSizes[kind]).map(([unit, size]) => ({ unit, figure: String(Number((value / size).toPrecision(12))) }));
  const { figure, unit } = written.reduce((best, one) => (one.figure.length < best.figure.length ? one : best));
  return `${figure} ${unit}`;
}

/** Null when there is no figure with a unit of the kind. */
export function readWithUnit(kind: UnitKind, text: string): number | null {
  const match = /^\s*(-?\d*\.?\d+(?:e-?\d+)?)\s*(\S+)\s*$/i.exec(text);
  const size = Object.entries<number>(unitSizes[kind]).find(([unit]) => unit.toLowerCase() === match?.[2]?.toLowerCase())?.[1];
  return match === null || size === undefined ? null : clean(Number(match[1]) * size);
}
