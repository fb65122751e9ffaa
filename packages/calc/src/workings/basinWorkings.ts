import { GRAVITY, HOUR, WATER_DENSITY } from '../common/constants.ts';
import { CONCRETE_DENSITY, flotation } from '../basin/flotation.ts';
import type { Basin } from '../document/document.ts';
import { dutyFlow, dutyPumpsOf } from '../evaluate/pumpedParts.ts';
import { PI } from '../math/constants.ts';
import type { BasinResult, Working, WorkingSymbol } from '../results/results.ts';
import { partById } from '../routing/pathParts.ts';
import { fieldOf, indexBy, step, symbol, working, type WorkingInput } from './working.ts';

interface BasinSheet {
  readonly input: WorkingInput;
  readonly index: number;
  readonly item: BasinResult;
  readonly basin: Basin;
}

/** Flow of the duty pumps together, as the sum of their results. */
function pumpFlows({ input, basin }: BasinSheet): { readonly formula: string; readonly symbols: WorkingSymbol[]; readonly value: number } {
  const symbols = dutyPumpsOf(input.document, basin).map((pump) => {
    const index = indexBy(input.results.pumps, (item) => item.part === pump.id);
    return symbol(`Q_${index + 1}`, 'pumpFlow', input.results.pumps[index]!.dutyAtOff.flow, 'flow', `/results/pumps/${index}/dutyAtOff/flow`);
  });
  return { formula: symbols.map((one) => one.symbol).join(' + ') || '0', symbols, value: dutyFlow(input.document, basin) };
}

function volumeSheet(sheet: BasinSheet): Working {
  const { input, index, item, basin } = sheet;
  const { context, document } = input;
  const field = (name: string): string => fieldOf(document, basin.id, name);
  const area = (PI / 4) * basin.diameter * basin.diameter;
  const store = context.model.basins[index]!;
  const between = store.storage.volume(store.onLevel) - store.storage.volume(store.offLevel);
  const runBack = store.pump?.runBack ?? 0;
  return working({
    result: `/results/basins/${index}/workingVolume`, at: basin.id, formula: 'V = max(V_min, pi/4*D^2*(z_on - z_off) + V_p - V_b)', value: item.workingVolume, unit: 'volume',
    source: 'Geometry: basin between start and stop level, with what stands in its marks, pipes and channels between them, less what the line gives back', tolerance: 1e-6,
    symbols: [
      symbol('pi', 'pi', PI, 'number'), symbol('D', 'basinDiameter', basin.diameter, 'diameter', field('diameter')), symbol('z_on', 'onLevel', basin.onLevel, 'level', field('onLevel')),
      symbol('z_off', 'offLevel', basin.offLevel, 'level', field('offLevel')), symbol('V_p', 'besideCylinder', between - area * (basin.onLevel - basin.offLevel), 'volume'),
      symbol('V_b', 'runBack', runBack, 'volume'), symbol('V_min', 'leastVolume', 2.5e-4, 'volume'),
    ],
  });
}

function cycleSheets(sheet: BasinSheet): Working[] {
  const { index, item, basin } = sheet;
  const flows = pumpFlows(sheet);
  const volume = symbol('V', 'workingVolume', item.workingVolume, 'volume', `/results/basins/${index}/workingVolume`);
  const total = step('Q_p', 'pumpFlow', flows.formula, flows.value, 'flow');
  const symbols = [...flows.symbols, volume];
  const pointer = `/results/basins/${index}`;
  if (flows.value <= 0) {
    const still = { at: basin.id, source: 'No duty pump lifts water here', symbols: [...symbols], steps: [total], value: 0 };
    return [
      working({ ...still, result: `${pointer}/worstStartsPerHour`, formula: 'N = 0*V', unit: 'count' }), working({ ...still, result: `${pointer}/aloneRunTime`, formula: 'T = 0*V', unit: 'seconds' }),
    ];
  }
  return [
    working({
      result: `${pointer}/worstStartsPerHour`, at: basin.id, formula: 'N = t*Q_p/(4*V)', symbols: [symbol('t', 'oneHour', HOUR, 'seconds'), ...symbols], steps: [total], value: item.worstStartsPerHour,
      unit: 'number', source: 'MIL-HDBK-1005/9A, UFC 3-240-04A: worst at half the pump\'s flow', tolerance: 1e-6,
    }),
    working({ result: `${pointer}/aloneRunTime`, at: basin.id, formula: 'T = V/Q_p', symbols, steps: [total], value: item.aloneRunTime, unit: 'seconds', source: 'Volume over time', tolerance: 1e-6 }),
  ];
}

function flotationSheet({ input, index, item, basin }: BasinSheet, field: 'flotationAtWaterTable' | 'flotationAtGrade' | 'upliftAtWaterTable'): Working[] {
  const value = item[field];
  const { soil } = input.document.site;
  const water = field === 'flotationAtGrade' ? Math.max(soil.gradeLevel, basin.floorLevel + 0.01) : soil.seasonalHighWaterTable;
  if (value === null || water === null) return [];
  const from = (name: string): string => fieldOf(input.document, basin.id, name);
  const { uplift } = flotation(basin, water);
  const depth = Math.max(0, Math.min(water, basin.rimLevel) - basin.floorLevel);
  const symbols = [
    symbol('z_w', 'groundWater', water, 'level', field === 'flotationAtGrade' ? '/site/soil/gradeLevel' : '/site/soil/seasonalHighWaterTable'),
    symbol('z_r', 'rimLevel', basin.rimLevel, 'level', from('rimLevel')), symbol('z_f', 'floorLevel', basin.floorLevel, 'level', from('floorLevel')),
    symbol('rho', 'waterDensity', WATER_DENSITY, 'number'), symbol('g', 'freeFall', GRAVITY, 'acceleration'), symbol('pi', 'pi', PI, 'number'),
    symbol('D', 'basinDiameter', basin.diameter, 'diameter', from('diameter')),
  ];
  const steps = [step('h', 'depthInGroundWater', 'max(0, min(z_w, z_r) - z_f)', depth, 'length')];
  const base = { result: `/results/basins/${index}/${field}`, at: basin.id, value, tolerance: 1e-6, source: 'Archimedes; collar taken under water, pump and soil not counted' };
  if (field === 'upliftAtWaterTable') return [working({ ...base, formula: 'U = rho*g*pi/4*D^2*h', unit: 'force', symbols, steps })];
  if (uplift === 0) return [working({ ...base, formula: 'F = 0*h', unit: 'number', symbols, steps })];
  return [working({
    ...base, formula: 'F = g*(m + V_c*(rho_c - rho))/U', unit: 'number', steps: [...steps, step('U', 'uplift', 'rho*g*pi/4*D^2*h', uplift, 'force')], symbols: [
      ...symbols, symbol('m', 'emptyMass', basin.emptyMass, 'mass', from('emptyMass')), symbol('V_c', 'collarVolume', basin.collarVolume, 'bulk', from('collarVolume')),
      symbol('rho_c', 'concreteDensity', CONCRETE_DENSITY, 'number'),
    ],
  })];
}

export function basinWorkings(input: WorkingInput): Working[] {
  return input.results.basins.flatMap((item, index) => {
    const sheet: BasinSheet = { input, index, item, basin: partById(input.document, item.part) as Basin };
    return [
      volumeSheet(sheet), ...cycleSheets(sheet), ...flotationSheet(sheet, 'upliftAtWaterTable'), ...flotationSheet(sheet, 'flotationAtWaterTable'),
      ...flotationSheet(sheet, 'flotationAtGrade'),
    ];
  });
}
