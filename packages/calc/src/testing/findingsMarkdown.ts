import { FOOT, HOUR, INCH, MINUTE } from '../common/constants.ts';
import { isReached, type Limit, type LimitQuantity } from '../findings/limit.ts';
import { limits, type LimitId } from '../findings/limits.ts';
import { checkTable, type CheckRow } from '../findings/table.ts';
import { findingCodes } from '../findings/codes.ts';
import type { Params } from '../results/results.ts';
import { findingCases } from './cases/index.ts';
import { findingsOfCase } from './staticFindings.ts';

interface Unit {
  readonly si: string;
  readonly trade: string;
  /** SI value of one unit of the trade. */
  readonly size: number;
}

const plain: Unit = { si: '', trade: '', size: 1 };
const units: Readonly<Record<LimitQuantity, Unit>> = {
  height: { si: ' m', trade: ' in', size: INCH }, tape: { si: ' m', trade: ' in', size: INCH }, length: { si: ' m', trade: ' ft', size: FOOT },
  slope: { si: '', trade: ' in/ft', size: 1 / 12 }, number: plain, percent: { si: '', trade: ' %', size: 0.01 }, count: plain, velocity: { si: ' m/s', trade: ' ft/s', size: FOOT },
  stress: { si: ' Pa', trade: ' lb/sq ft', size: 47.88025898033584 }, seconds: { si: ' s', trade: ' s', size: 1 }, minutes: { si: ' s', trade: ' min', size: MINUTE },
  hours: { si: ' s', trade: ' h', size: HOUR }, area: { si: ' m2', trade: ' sq ft', size: FOOT * FOOT }, flow: { si: ' m3/s', trade: ' cfs', size: FOOT * FOOT * FOOT },
  intensity: { si: ' m/s', trade: ' in/h', size: INCH / HOUR },
};

const figure = (value: number): string => String(Number(value.toPrecision(4)));

function limitCell(id: LimitId): string {
  const limit: Limit = limits[id];
  const unit = units[limit.quantity];
  const sign = limit.sense === 'atLeast' ? '>=' : '<=';
  const values = isReached(limit) && limit.fail !== limit.pass ? [limit.pass, limit.fail] : [limit.pass];
  const si = values.map((value) => `${figure(value)}${unit.si}`).join(' / ');
  const trade = values.map((value) => `${figure(value / unit.size)}${unit.trade}`).join(' / ');
  return `${id} ${sign} ${si}${trade === si ? '' : ` (${trade})`}${isReached(limit) ? '' : ', no stop'}`;
}

function sourcesOf(row: CheckRow): string {
  return [...new Set([...row.limits.map((id) => limits[id].source), ...(row.source === undefined ? [] : [row.source])])].join('; ');
}

function rowsOf(row: CheckRow): string[] {
  return row.codes.map((code, index) => {
    const { severity, what, base, cured, raises } = findingCases[code];
    const cure = !cured ? '' : raises.length === 0 ? 'clears it' : `clears it; ${raises.join(', ')} must follow`;
    const head = index === 0 ? [row.check, row.what, row.limits.map(limitCell).join('<br>'), sourcesOf(row)] : ['', '', '', ''];
    return `| ${[...head, code, severity, `${what} (${base})`, cure].join(' | ')} |`;
  });
}

/** What each code and each remedy gives a sentence to speak of: names, and whether a figure or a word. */
export function findingFigures(): Record<string, Record<string, string>> {
  const kinds = (params: Params) => Object.fromEntries(Object.entries(params).map(([name, value]): [string, string] => [name, typeof value]).sort(([a], [b]) => (a < b ? -1 : 1)));
  const found = findingCodes.flatMap((code) => findingsOfCase(findingCases[code]).filter((finding) => finding.code === code));
  const told = found.flatMap(({ code, params, remedy }): [string, Record<string, string>][] => [[code, kinds(params)], ...(remedy === null ? [] : [[remedy.code, kinds(remedy.params)] as [string, Record<string, string>]])]);
  return Object.fromEntries(told.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)));
}

/** The table of all checks as the file FINDINGS.md holds it. */
export function findingsMarkdown(): string {
  return [
    '# Checks and findings', '',
    'Written by `bench/writeFindings.ts`; a test fails when it is stale. `pass / fail` of a limit: between the two a caution, beyond the second a stop.',
    'Each code is raised by the case named beside it, built on one of five sound sites (tern, ridge, lawn, dry, under) and run by `src/findings/cases.test.ts`, which also holds that',
    'the sound site is silent and that the remedy, where a mechanical one exists, clears the finding and raises no other stop.', '',
    '| check | what | limits, SI (trade) | source | code | severity | case | remedy |', '| --- | --- | --- | --- | --- | --- | --- | --- |',
    ...checkTable.flatMap(rowsOf), '',
  ].join('\n');
}
