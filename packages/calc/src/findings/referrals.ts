import type { Observation } from '../document/document.ts';
import type { Finding, Severity } from '../results/results.ts';
import { ruled, stated, isMet, type CheckInput } from './finding.ts';

const source = 'Cases the method does not cover: a licensed engineer or the authority decides';

/** Water on dry days is first a leak to be found; everything else here is not ours to design. */
const severityOf = (kind: Observation['kind']): Severity => (kind === 'waterOnDryDays' ? 'caution' : 'refer');

export function observations({ document }: CheckInput): Finding[] {
  return document.site.observations.map(({ id, kind, note }) => stated('R', kind, severityOf(kind), source, { at: id, params: { note } }));
}

/** Beyond one acre or one cubic foot per second rules of thumb end. */
export function bigSites(input: CheckInput): Finding[] {
  const { document, results } = input;
  const area = document.site.catchments.filter(({ drainsTo }) => drainsTo.kind !== 'offSite').reduce((sum, catchment) => sum + catchment.area, 0);
  const flow = results.peaks.filter((peak) => peak.returnPeriod === document.rain.designReturnPeriod).reduce((most, peak) => Math.max(most, peak.flow), 0);
  const found: Finding[] = [];
  if (!isMet(input, 'R1', area)) found.push(ruled(input, 'R', 'R1', 'bigCatchment', 'refer', { at: null, params: { area } }));
  if (!isMet(input, 'R2', flow)) found.push(ruled(input, 'R', 'R2', 'bigFlow', 'refer', { at: null, params: { flow } }));
  return found;
}
