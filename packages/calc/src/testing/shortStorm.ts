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

/** The same site and system under one storm of an hour, the one that it is designed for. */
export function withShortStorm(document: DesignDocument): DesignDocument {
  const { rain } = document;
  const { designReturnPeriod, table, storm } = rain;
  return {
    ...document,
    rain: {
      ...rain, table: columns(table, [designReturnPeriod]), checkReturnPeriod: designReturnPeriod, storm: { method: 'alternatingBlock', duration: HOUR, block: storm.block },
      recorded: null,
    },
  };
}
