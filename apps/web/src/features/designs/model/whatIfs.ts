import type { DesignDocument, Results, WhatIfCase } from '@yardfall/calc';

/** One case in one storm at one sill, with the places of its numbers. */
export interface WhatIfCell {
  /** Height of the sill over the highest water [m]; negative: it comes in. */
  readonly freeboard: number;
  /** How long the water stands over the sill [min]. */
  readonly minutes: number;
  readonly freeboardAt: string;
  readonly minutesAt: string;
}

export interface WhatIfRow {
  readonly key: string;
  readonly case: WhatIfCase | 'system';
  /** Part that fails; null where it is not one part. */
  readonly at: string | null;
  /** How long the power is out [s]; null in every other case. */
  readonly outage: number | null;
  /** One for each storm of the table, in order. */
  readonly cells: readonly (WhatIfCell | null)[];
}

export interface WhatIfTable {
  readonly sill: string;
  /** Return periods [years]. */
  readonly storms: readonly number[];
  readonly rows: readonly WhatIfRow[];
}

/** Every case beside every other, the bare site first and the system as designed second: one table a sill. */
export function whatIfTables(document: DesignDocument, results: Results): WhatIfTable[] {
  if (results.whatIfs.length === 0) return [];
  const storms = [...new Set(results.whatIfs.map(({ returnPeriod }) => returnPeriod))].toSorted((a, b) => a - b);
  return document.site.sills.map(({ id }) => {
    const rows = caseRows(results, id, storms);
    const bare = rows.filter((row) => row.case === 'noSystem');
    return { sill: id, storms, rows: [...bare, ...systemRow(results, id, storms), ...rows.filter((row) => row.case !== 'noSystem')] };
  });
}

function caseRows(results: Results, sill: string, storms: readonly number[]): WhatIfRow[] {
  const keyOf = (item: { readonly case: string; readonly at: string | null }): string => `${item.case} ${item.at ?? ''}`;
  return [...new Set(results.whatIfs.map(keyOf))].flatMap((key) => {
    const same = results.whatIfs.flatMap((item, index) => (keyOf(item) === key ? [{ item, index }] : []));
    const [first] = same;
    if (first === undefined) return [];
    const cells = storms.map((years): WhatIfCell | null => {
      const found = same.find(({ item }) => item.returnPeriod === years);
      const place = found?.item.sills.findIndex((one) => one.sill === sill) ?? -1;
      const one = found?.item.sills[place];
      if (found === undefined || one === undefined) return null;
      const at = `/results/whatIfs/${String(found.index)}/sills/${String(place)}`;
      return { freeboard: one.freeboard, minutes: one.minutesOverSill, freeboardAt: `${at}/freeboard`, minutesAt: `${at}/minutesOverSill` };
    });
    const outage = first.item.outage === null ? null : first.item.outage[1] - first.item.outage[0];
    return [{ key, case: first.item.case, at: first.item.at, outage, cells }];
  });
}

/** As designed, by the same run that all cases stand on. */
function systemRow(results: Results, sill: string, storms: readonly number[]): WhatIfRow[] {
  const cells = storms.map((years): WhatIfCell | null => {
    const place = results.freeboards.findIndex((one) => one.sill === sill && one.returnPeriod === years);
    const one = results.freeboards[place];
    const at = `/results/freeboards/${String(place)}`;
    return one === undefined ? null : { freeboard: one.onTwin, minutes: one.minutesOverSill, freeboardAt: `${at}/onTwin`, minutesAt: `${at}/minutesOverSill` };
  });
  return [{ key: 'system', case: 'system', at: null, outage: null, cells }];
}
