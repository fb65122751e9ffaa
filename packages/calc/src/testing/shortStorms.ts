import type { DesignDocument, RainTable } from '../document/document.ts';

const HOUR = 3600;

/** The table with some of its return periods. */
function columns(table: RainTable, periods: readonly number[]): RainTable {
  const kept = table.returnPeriods.map((period, i) => ({ period, i })).filter(({ period }) => periods.includes(period));
  const cut = (rows: readonly (readonly number[])[]): number[][] => rows.map((row) => kept.map(({ i }) => row[i]!));
  return {
    ...table, returnPeriods: kept.map(({ period }) => period), depths: cut(table.depths),
    lower: table.lower === null ? null : cut(table.lower), upper: table.upper === null ? null : cut(table.upper),
  };
}

/** The same site and system under storms of one hour, with no other return periods than those that it is designed and checked for. */
export function withShortStorms(document: DesignDocument): DesignDocument {
  const { rain } = document;
  return {
    ...document,
    rain: { ...rain, table: columns(rain.table, [rain.designReturnPeriod, rain.checkReturnPeriod]), storm: { method: 'alternatingBlock', duration: HOUR, block: rain.storm.block } },
  };
}
