import type { DesignDocument } from '../document/document.ts';
import type { Params } from '../results/results.ts';
import type { FittedLoss } from './fitExistingLoss.ts';
import type { SillAnswer } from './longRecord.ts';
import type { RainRecord } from './rainRecord.ts';
import type { RecordQuality } from './quality.ts';

/** Mean ratio of the wettest sixty minutes to the wettest clock hour. Source: Weiss 1964, from memory. */
export const CLOCK_HOUR_RATIO = 1.13;

/** Everything that the words beside a long record may have to say. */
export const recordNoteCodes = [
  'record.gauge', 'record.gaugeDistance', 'record.distanceUnknown', 'record.span', 'record.gaps', 'record.yearsLeftOut', 'record.coarse', 'record.flaggedSums',
  'record.suspectedSums', 'record.rejected', 'record.range', 'record.clockHours', 'record.snow', 'record.counted', 'record.with', 'record.withRange', 'record.withNever',
  'record.without', 'record.withoutRange', 'record.withoutEstimate', 'record.withoutEstimateRange', 'record.fitted', 'record.neverEmpties', 'record.noReturnPeriod', 'record.notThisYard',
] as const;
export type RecordNoteCode = (typeof recordNoteCodes)[number];

/** A sentence to say with the result: a code of the text catalogues and its parameters. */
export interface RecordNote {
  readonly code: RecordNoteCode;
  readonly params: Params;
}

/** To a tenth, as it is said; upper limits up and lower limits down, so that no saying promises more than the number. */
const tenth = (value: number): number => Math.floor(value * 10 + 0.5) / 10;
const tenthUp = (value: number): number => -Math.floor(-value * 10) / 10;
const tenthDown = (value: number): number => Math.floor(value * 10) / 10;

function aboutGauge({ gauge, depths, step }: RainRecord, quality: RecordQuality): RecordNote[] {
  const name = gauge.name === '' ? gauge.id : gauge.name;
  const distance: RecordNote = gauge.distance === null
    ? { code: 'record.distanceUnknown', params: { name } }
    : { code: 'record.gaugeDistance', params: { name, distance: gauge.distance } };
  const notes: RecordNote[] = [
    { code: 'record.gauge', params: { name, id: gauge.id } }, distance,
    { code: 'record.span', params: { from: quality.from.slice(0, 10), to: quality.to.slice(0, 10), years: tenth(quality.observedYears) } },
  ];
  const all = (depths.length * step) / 3600;
  if (quality.gaps.length > 0) notes.push({ code: 'record.gaps', params: { count: quality.gaps.length, hours: quality.missingHours, share: quality.missingHours / all } });
  const left = quality.years.length - quality.completeYears;
  if (left > 0) notes.push({ code: 'record.yearsLeftOut', params: { count: left, of: quality.years.length } });
  for (const { from, to } of quality.coarse) notes.push({ code: 'record.coarse', params: { from: from.slice(0, 10), to: to.slice(0, 10) } });
  const sums = (kind: 'flagged' | 'suspected'): number => quality.accumulations.filter((item) => item.kind === kind).length;
  if (sums('flagged') > 0) notes.push({ code: 'record.flaggedSums', params: { count: sums('flagged') } });
  if (sums('suspected') > 0) notes.push({ code: 'record.suspectedSums', params: { count: sums('suspected') } });
  if (quality.rejected > 0) notes.push({ code: 'record.rejected', params: { count: quality.rejected } });
  return notes;
}

function aboutSill(document: DesignDocument, answer: SillAnswer, years: number): RecordNote[] {
  const sill = document.site.sills.find(({ id }) => id === answer.sill)!.name;
  const notes: RecordNote[] = [];
  const without = answer.withoutSystem;
  if (without !== null) {
    const { low, high } = without;
    const [lowerLimit, upperLimit] = [tenthDown(without.lowerLimit), tenthUp(without.upperLimit)];
    if (low === high) notes.push({ code: without.estimate ? 'record.withoutEstimate' : 'record.without', params: { sill, count: high, years, lowerLimit, upperLimit } });
    else notes.push({ code: without.estimate ? 'record.withoutEstimateRange' : 'record.withoutRange', params: { sill, low, high, years, lowerLimit, upperLimit } });
  }
  const system = answer.withSystem;
  if (system === null) return notes;
  const { low, high } = system;
  const upperLimit = tenthUp(system.upperLimit);
  if (high === 0) notes.push({ code: 'record.withNever', params: { sill, years, upperLimit } });
  else if (low === high) notes.push({ code: 'record.with', params: { sill, count: high, years, upperLimit } });
  else notes.push({ code: 'record.withRange', params: { sill, low, high, years, upperLimit } });
  return notes;
}

/** What has to be said with a result, in the order in which it is said. */
export function recordNotes(
  document: DesignDocument, record: RainRecord, quality: RecordQuality, sills: readonly SillAnswer[], fitted: FittedLoss | null,
): RecordNote[] {
  const years = tenth(quality.observedYears);
  const notes = sills.flatMap((answer) => aboutSill(document, answer, years));
  if (fitted !== null) notes.push({ code: 'record.fitted', params: { perYear: fitted.reportedPerYear, share: fitted.share } });
  const stuck = document.site.lowSpots.filter((spot) => spot.existingLoss === 0 && spot.id !== fitted?.lowSpot);
  for (const spot of stuck) notes.push({ code: 'record.neverEmpties', params: { spot: spot.name } });
  notes.push(...aboutGauge(record, quality));
  if (record.step === 3600) notes.push({ code: 'record.range', params: {} }, { code: 'record.clockHours', params: { share: CLOCK_HOUR_RATIO - 1 } }, { code: 'record.snow', params: {} });
  notes.push({ code: 'record.counted', params: { hours: 6 } }, { code: 'record.noReturnPeriod', params: { years } }, { code: 'record.notThisYard', params: {} });
  return notes;
}
