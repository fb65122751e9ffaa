import { DocumentError } from './error.ts';
import { checkFields, checkWord } from './fields.ts';
import { rainRules, recordedRules, stormRules, tableRules } from './rules.ts';
import type { Rain, RainTable, RecordedStorm } from './document.ts';

function checkRising(values: readonly number[], path: string, least: number): void {
  if (values.length < least) throw new DocumentError('document.tooFew', path, { least });
  if (values.length > 100) throw new DocumentError('document.tooMany', path, { most: 100 });
  values.forEach((value, index) => {
    checkFields({ value }, { value: 'positive' }, `${path}/${index}`);
    if (index > 0 && value <= values[index - 1]!) throw new DocumentError('document.notRising', `${path}/${index}`);
  });
}

function checkDepths(table: RainTable, name: 'depths' | 'lower' | 'upper'): void {
  const rows = table[name];
  const path = `/rain/table/${name}`;
  if (rows === null) return;
  if (!Array.isArray(rows)) throw new DocumentError('document.missing', path);
  if (rows.length !== table.durations.length) throw new DocumentError('document.tableShape', path, { expected: table.durations.length, found: rows.length });
  (rows as readonly (readonly number[])[]).forEach((row, i) => {
    if (!Array.isArray(row) || row.length !== table.returnPeriods.length) {
      throw new DocumentError('document.tableShape', `${path}/${i}`, { expected: table.returnPeriods.length, found: Array.isArray(row) ? row.length : 0 });
    }
    row.forEach((depth: number, j) => {
      checkFields({ depth }, { depth: 'positive' }, `${path}/${i}/${j}`);
      if (j > 0 && depth < row[j - 1]!) throw new DocumentError('document.notRising', `${path}/${i}/${j}`);
      const above = (rows as readonly (readonly number[])[])[i - 1]?.[j];
      if (above !== undefined && depth < above) throw new DocumentError('document.notRising', `${path}/${i}/${j}`);
    });
  });
}

/** The NRCS types are shapes of one day [s]. */
const day = 86_400;

/** Storms shorter than an hour hold no nested peak worth routing; more than 2,000 blocks are a typing error. */
function checkStorm(rain: Rain): void {
  const { duration, block, method } = rain.storm;
  checkWord(method, ['alternatingBlock', 'nrcsI', 'nrcsIA', 'nrcsII', 'nrcsIII'], '/rain/storm/method');
  if (method !== 'alternatingBlock' && duration !== day) throw new DocumentError('document.outOfRange', '/rain/storm/duration', { low: day, high: day });
  const longest = rain.table.durations[rain.table.durations.length - 1]!;
  const shortest = rain.table.durations[0]!;
  if (duration > longest) throw new DocumentError('document.outOfRange', '/rain/storm/duration', { low: block, high: longest });
  if (block < shortest) throw new DocumentError('document.outOfRange', '/rain/storm/block', { low: shortest, high: duration });
  const blocks = duration / block;
  if (blocks < 1 || Math.floor(blocks) !== blocks) throw new DocumentError('document.outOfRange', '/rain/storm/block', { low: shortest, high: duration });
  if (blocks > 2000) throw new DocumentError('document.tooMany', '/rain/storm/block', { most: 2000 });
}

/** A recorded storm of more than 20,000 readings is a record, which is another input. */
function checkRecorded({ depths }: RecordedStorm): void {
  if (depths.length === 0) throw new DocumentError('document.tooFew', '/rain/recorded/depths', { least: 1 });
  if (depths.length > 20_000) throw new DocumentError('document.tooMany', '/rain/recorded/depths', { most: 20_000 });
  depths.forEach((depth, index) => { checkFields({ depth }, { depth: 'nonNegative' }, `/rain/recorded/depths/${index}`); });
}

export function checkRain(rain: Rain): void {
  checkFields(rain, rainRules, '/rain');
  checkFields(rain.table, tableRules, '/rain/table');
  checkFields(rain.storm, stormRules, '/rain/storm');
  checkRising(rain.table.durations, '/rain/table/durations', 2);
  checkRising(rain.table.returnPeriods, '/rain/table/returnPeriods', 1);
  checkDepths(rain.table, 'depths');
  if (rain.table.depths === null) throw new DocumentError('document.missing', '/rain/table/depths');
  checkDepths(rain.table, 'lower');
  checkDepths(rain.table, 'upper');
  checkStorm(rain);
  if (rain.recorded !== null) {
    checkFields(rain.recorded, recordedRules, '/rain/recorded');
    checkRecorded(rain.recorded);
  }
  for (const key of ['designReturnPeriod', 'checkReturnPeriod'] as const) {
    const periods = rain.table.returnPeriods;
    if (rain[key] < periods[0]! || rain[key] > periods[periods.length - 1]!) {
      throw new DocumentError('document.notInTable', `/rain/${key}`, { value: rain[key], low: periods[0]!, high: periods[periods.length - 1]! });
    }
  }
}
