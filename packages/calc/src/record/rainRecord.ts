/** Reading that the gauge does not have. Missing is not dry: it counts as no observed time. */
export const MISSING = -1;

export interface Gauge {
  readonly id: string;
  readonly name: string;
  /** Degrees, north and east positive; null when the file does not say. */
  readonly latitude: number | null;
  readonly longitude: number | null;
  /** From the site [m]; null when not known. */
  readonly distance: number | null;
}

/** Rain over hours that the gauge gave as one sum. */
export interface Accumulation {
  /** Readings from and to, the last one included. */
  readonly from: number;
  readonly to: number;
  /** [mm] */
  readonly depth: number;
  /** marked by the record's own flag and left out of the run, or suspected from the readings and left in. */
  readonly kind: 'flagged' | 'suspected';
}

/** Years of readings on an even grid, in the gauge's own standard time. */
export interface RainRecord {
  readonly gauge: Gauge;
  /** Length of one reading [s]: hourly or five minutes. */
  readonly step: 3600 | 300;
  /** Day number of the first reading, which begins at midnight; see calendar.ts. */
  readonly startDay: number;
  /** Depth of each reading [mm]; `MISSING` where there is none. Whole days. */
  readonly depths: Float64Array;
  readonly accumulations: readonly Accumulation[];
  /** Readings that failed a check of the record's own and count as missing. */
  readonly rejected: number;
}

export const readingsPerDay = (record: Pick<RainRecord, 'step'>): number => 86400 / record.step;

/** The record with the distance of its gauge from the site [m]. */
export function atDistance(record: RainRecord, distance: number | null): RainRecord {
  return { ...record, gauge: { ...record.gauge, distance } };
}
