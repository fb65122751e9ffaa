import type { Sill } from '../document/document.ts';
import { pathFrom, partsOf } from '../routing/pathParts.ts';
import type { Finding, Freeboard } from '../results/results.ts';
import { graded, type CheckInput } from './finding.ts';

function paramsOf(sill: Sill, item: Freeboard): Record<string, number | string> {
  return {
    sill: sill.name, freeboard: item.lower, shortBy: -item.lower, middle: item.onTwin, upper: item.upper, returnPeriod: item.returnPeriod,
    duration: item.minutesOverSill * 60, without: item.withoutSystem,
  };
}

const designCodes = (item: Freeboard) => ({ pass: 'ok', warn: 'freeboardThin', fail: item.lower < 0 ? 'overSill' : 'freeboardShort' } as const);

/** L5 and L6: freeboard at every sill by the lower end of the band. A sill under water is said in minutes. */
export function freeboard(input: CheckInput): Finding[] {
  const { document, results } = input;
  if (document.system.parts.length === 0) return [];
  const { designReturnPeriod, checkReturnPeriod } = document.rain;
  return results.freeboards.flatMap((item) => {
    const sill = document.site.sills.find(({ id }) => id === item.sill)!;
    const where = { at: item.sill, params: paramsOf(sill, item) };
    if (item.returnPeriod === designReturnPeriod) return graded(input, 'L5', 'L5', item.lower, designCodes(item), where);
    if (item.returnPeriod === checkReturnPeriod) return graded(input, 'L6', 'L6', item.lower, { pass: 'ok', warn: 'atSill', fail: 'overSill' }, where);
    return [];
  });
}

/** P2: what the duty flow of each basin's pumps leaves below the sills that they guard, in the routed design storm. */
export function pumpedFreeboard(input: CheckInput): Finding[] {
  const { document, results } = input;
  return partsOf(document, 'basin').flatMap((basin) => {
    const pumps = partsOf(document, 'pump').filter((pump) => pump.basin === basin.id);
    const inlets = [...partsOf(document, 'channel'), ...partsOf(document, 'catchBasin')].filter((inlet) => pathFrom(document, inlet.id).some(({ id }) => id === basin.id));
    const sills = document.site.sills.filter((sill) => inlets.some((inlet) => inlet.lowSpot === sill.lowSpot));
    const lowest = results.freeboards.filter((item) => item.returnPeriod === document.rain.designReturnPeriod && sills.some(({ id }) => id === item.sill))
      .sort((a, b) => a.lower - b.lower)[0];
    const first = pumps[0];
    if (lowest === undefined || first === undefined) return [];
    const flow = results.pumps.filter(({ part }) => pumps.some(({ id, role }) => id === part && role === 'duty')).reduce((sum, pump) => sum + pump.dutyAtOff.flow, 0);
    const params = { ...paramsOf(sills.find(({ id }) => id === lowest.sill)!, lowest), pump: first.name, flow };
    return graded(input, 'P2', 'L5', lowest.lower, designCodes(lowest), { at: first.id, params });
  });
}
