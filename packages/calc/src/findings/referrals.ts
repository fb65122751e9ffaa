import type { Observation } from '../document/document.ts';
import type { Finding, Severity } from '../results/results.ts';
import { stated, type CheckInput } from './finding.ts';
import { limits } from './limits.ts';

const source = 'Cases the method does not cover: a licensed engineer or the authority decides';

/** Water on dry days is first a leak to be found; everything else here is not ours to design. */
const severityOf = (kind: Observation['kind']): Severity => (kind === 'waterOnDryDays' ? 'caution' : 'refer');

export function observations({ document }: CheckInput): Finding[] {
  return document.site.observations.map(({ id, kind, note }) => stated('R', kind, severityOf(kind), id, { note }, source));
}

/** Beyond one acre or one cubic foot per second rules of thumb end. */
export function bigSites({ document, results }: CheckInput): Finding[] {
  const area = document.site.catchments.filter(({ drainsTo }) => drainsTo.kind !== 'offSite').reduce((sum, catchment) => sum + catchment.area, 0);
  const flow = results.peaks.filter((peak) => peak.returnPeriod === document.rain.designReturnPeriod).reduce((most, peak) => Math.max(most, peak.flow), 0);
  const found: Finding[] = [];
  if (area > limits.R1.pass) found.push(stated('R', 'bigCatchment', 'refer', null, { area, pass: limits.R1.pass }, limits.R1.source));
  if (flow > limits.R2.pass) found.push(stated('R', 'bigFlow', 'refer', null, { flow, pass: limits.R2.pass }, limits.R2.source));
  return found;
}

/** An invented table, or one marked so, is not for building from. */
export function rainTable({ document }: CheckInput): Finding[] {
  const { table } = document.rain;
  if (!table.illustrative) return [];
  return [stated('rain', 'illustrative', 'caution', null, { table: table.name }, 'Ours: a table marked as illustrative is not for building from')];
}
