import type { DryWell, Outlet } from '../document/document.ts';
import { dryWellEmptying } from '../outlet/dryWell.ts';
import type { Finding } from '../results/results.ts';
import { partsOf } from '../routing/pathParts.ts';
import { graded, ruled, stated, type CheckInput } from './finding.ts';
import { setFields } from './patch.ts';
import { shallowerWell } from './remedies/outlets.ts';

/** Time in which a full dry well soaks away [s], at the rate that the design names. */
function emptyingTime(well: DryWell): number {
  return dryWellEmptying({ ...well, baseRate: well.infiltrationRate, sideRate: well.infiltrationRate }, well.depth, 0);
}

/** N8: the design rate against the measured one, and the measured one within the range of the method. */
function rates(input: CheckInput, outlet: Outlet, well: DryWell): Finding[] {
  const { document, limits } = input;
  const measured = document.site.soil.infiltrationRate;
  const params = { outlet: outlet.name, measured: measured ?? 0, design: well.infiltrationRate, factor: measured === null || well.infiltrationRate === 0 ? 0 : measured / well.infiltrationRate };
  const at = outlet.id;
  if (measured === null) return [ruled(input, 'N8', 'N8Factor', 'untested', 'caution', { at, params })];
  const halved = () => (measured === 0 ? null : setFields(document, outlet, { 'dryWell/infiltrationRate': measured / limits.N8Factor.pass }, 'remedy.ratedSoil', { outlet: outlet.name, rate: measured / limits.N8Factor.pass }));
  return [
    ...(well.infiltrationRate === 0 ? [] : graded(input, 'N8', 'N8Factor', params.factor, { warn: 'factorLow', fail: 'factorLow' }, { at, params, remedy: halved })),
    ...graded(input, 'N8', 'N8Slow', measured, { warn: 'soilSlow', fail: 'soilSlow' }, { at, params }),
    ...graded(input, 'N8', 'N8Fast', measured, { warn: 'soilFast', fail: 'soilFast' }, { at, params }),
  ];
}

function emptying(input: CheckInput, outlet: Outlet, well: DryWell): Finding[] {
  const { document, limits } = input;
  if (well.infiltrationRate === 0) return [ruled(input, 'N8', 'N8Time', 'neverEmpties', 'stop', { at: outlet.id, params: { outlet: outlet.name } })];
  const time = emptyingTime(well);
  const remedy = () => {
    for (let depth = well.depth * 0.9; depth > 0.1; depth *= 0.9) {
      const growth = well.depth / depth;
      const flatter = { ...well, depth, area: well.area * growth, perimeter: well.perimeter * Math.sqrt(growth) };
      if (emptyingTime(flatter) <= limits.N8Time.pass) return shallowerWell(document, outlet, well, depth);
    }
    return null;
  };
  return graded(input, 'N8', 'N8Time', time, { warn: 'emptiesSlowly', fail: 'emptiesSlowly' }, { at: outlet.id, params: { outlet: outlet.name, time }, remedy });
}

function overTable(input: CheckInput, outlet: Outlet, well: DryWell): Finding[] {
  const { document, limits } = input;
  const table = document.site.soil.seasonalHighWaterTable;
  if (table === null) return [ruled(input, 'N8', 'N8Table', 'waterTableUnknown', 'caution', { at: outlet.id, params: { outlet: outlet.name } })];
  const above = well.bottomLevel - table;
  const remedy = () => shallowerWell(document, outlet, well, well.depth - (limits.N8Table.pass - above));
  return graded(input, 'N8', 'N8Table', above, { warn: 'nearWaterTable', fail: 'nearWaterTable' }, { at: outlet.id, params: { outlet: outlet.name, above }, remedy });
}

function overflow({ document }: CheckInput, outlet: Outlet, well: DryWell): Finding[] {
  const source = 'Infiltration practices of state design manuals: always an overflow';
  const where = { at: outlet.id, params: { outlet: outlet.name } };
  if (!well.overflow) return [stated('N8', 'noOverflow', 'stop', source, { ...where, remedy: () => setFields(document, outlet, { 'dryWell/overflow': true }, 'remedy.giveOverflow', { outlet: outlet.name }) })];
  const back = well.overflowsTo !== null && document.site.sills.some(({ lowSpot }) => lowSpot === well.overflowsTo);
  return back ? [stated('N8', 'overflowsToSill', 'caution', source, where)] : [];
}

/** N8: a dry well: factor of safety, range of rate, height over the water table, time to empty, distance to the foundation, overflow. */
export function dryWells(input: CheckInput): Finding[] {
  return partsOf(input.document, 'outlet').flatMap((outlet) => {
    const well = outlet.dryWell;
    if (well === null) return [];
    const distance = graded(input, 'N8', 'N8Foundation', outlet.distanceToFoundation, { warn: 'nearFoundation', fail: 'nearFoundation' }, { at: outlet.id, params: { outlet: outlet.name, distance: outlet.distanceToFoundation } });
    const found = [...rates(input, outlet, well), ...emptying(input, outlet, well), ...overTable(input, outlet, well), ...distance, ...overflow(input, outlet, well)];
    if (found.length > 0) return found;
    return [ruled(input, 'N8', 'N8Time', 'ok', 'note', { at: outlet.id, params: { outlet: outlet.name, time: emptyingTime(well) } })];
  });
}
