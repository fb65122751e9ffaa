import { GRAVITY } from '../common/constants.ts';
import type { DesignDocument, Pump } from '../document/document.ts';
import { PI } from '../math/constants.ts';
import { hazenWilliamsSlope } from '../pump/hazenWilliams.ts';
import type { PumpCurve } from '../pump/pumpCurve.ts';
import { DRILLED_HOLE } from '../pump/weepHole.ts';
import type { DutyPoint, PumpResult, Working, WorkingSymbol } from '../results/results.ts';
import { partById } from '../routing/pathParts.ts';
import { pumpLineOf, type PumpLine } from '../routing/pumpLine.ts';
import { fieldOf, step, symbol, working, type WorkingInput } from './working.ts';

interface PumpSheet {
  readonly input: WorkingInput;
  readonly index: number;
  readonly item: PumpResult;
  readonly line: PumpLine;
}

const lineField = ({ input, line }: PumpSheet, name: string): string => fieldOf(input.document, line.line.id, name);
const pi = symbol('pi', 'pi', PI, 'number');
const bore = (sheet: PumpSheet): WorkingSymbol => symbol('d', 'innerDiameter', sheet.line.line.innerDiameter, 'diameter', lineField(sheet, 'innerDiameter'));
const run = (sheet: PumpSheet): WorkingSymbol => symbol('L', 'length', sheet.line.line.length, 'length', lineField(sheet, 'length'));

/** Field of the level that decides the lift: the outlet's water, its lid, or a higher point of the line. */
function liftField({ document }: WorkingInput, { line, outlet, liftLevel }: PumpLine): string {
  if (line.highPoint === liftLevel) return fieldOf(document, line.id, 'highPoint');
  return fieldOf(document, outlet.id, outlet.waterLevel === liftLevel ? 'waterLevel' : 'level');
}

/** Between which datasheet points a flow lies, as the smooth curve through them reads it. */
function curveTerms(document: DesignDocument, pump: Pump, curve: PumpCurve, flow: number): WorkingSymbol[] {
  const last = curve.flows.length - 2;
  let i = 0;
  while (i < last && flow > curve.flows[i + 1]!) i += 1;
  const path = fieldOf(document, pump.id, 'curve');
  const at = (offset: number): number => indexOfPoint(pump, curve.flows[i + offset]!);
  return [
    symbol('Q_0', 'datasheetFlow', curve.flows[i]!, 'flow', `${path}/${at(0)}/flow`), symbol('H_0', 'datasheetHead', curve.heads[i]!, 'head', `${path}/${at(0)}/head`),
    symbol('Q_1', 'datasheetFlow', curve.flows[i + 1]!, 'flow', `${path}/${at(1)}/flow`), symbol('H_1', 'datasheetHead', curve.heads[i + 1]!, 'head', `${path}/${at(1)}/head`),
    symbol('m_0', 'curveSlope', curve.slopes[i]!, 'number', path), symbol('m_1', 'curveSlope', curve.slopes[i + 1]!, 'number', path),
  ];
}

const indexOfPoint = (pump: Pump, flow: number): number => pump.curve.findIndex((point) => point.flow === flow);

function headSheet(sheet: PumpSheet, name: 'dutyAtOff' | 'dutyAtOn', duty: DutyPoint): Working {
  const { input, index, line } = sheet;
  const symbols = curveTerms(input.document, line.pump, line.curve, duty.flow);
  const [q0, , q1] = symbols;
  const share = (duty.flow - q0!.value) / (q1!.value - q0!.value);
  return working({
    result: `/results/pumps/${index}/${name}/head`, at: line.pump.id, formula: 'H = H_0*(1 + 2*s)*(1 - s)^2 + H_1*s^2*(3 - 2*s) + (Q_1 - Q_0)*s*(1 - s)*(m_0*(1 - s) - m_1*s)',
    value: duty.head, unit: 'head', source: 'Pump datasheet read by monotone cubics through its points (PCHIP)', tolerance: 1e-6,
    symbols: [symbol('Q', 'pumpFlow', duty.flow, 'flow', `/results/pumps/${index}/${name}/flow`), ...symbols],
    steps: [step('s', 'shareBetweenPoints', '(Q - Q_0)/(Q_1 - Q_0)', share, 'number')],
  });
}

function flowSheet(sheet: PumpSheet, name: 'dutyAtOff' | 'dutyAtOn', duty: DutyPoint): Working {
  const { input, index, line } = sheet;
  const pointer = `/results/pumps/${index}/${name}`;
  const base = { result: `${pointer}/flow`, at: line.pump.id, value: duty.flow, unit: 'flow' };
  const lift = symbol('h_s', 'staticHead', duty.staticHead, 'head', `${pointer}/staticHead`);
  const lid = symbol('h_lid', 'openingHead', line.outlet.openingHead, 'head', fieldOf(input.document, line.outlet.id, 'openingHead'));
  const curve = fieldOf(input.document, line.pump.id, 'curve');
  if (duty.flow <= 0) {
    const shutOff = symbol('H_0', 'shutOffHead', line.curve.shutOff, 'head', curve);
    return working({ ...base, formula: 'Q = max(0, H_0 - h_s - h_lid)', symbols: [shutOff, lift, lid], source: 'The pump cannot lift so high' });
  }
  if (duty.flow >= line.curve.runOut) {
    return working({ ...base, formula: 'Q = Q_e', symbols: [symbol('Q_e', 'runOutFlow', line.curve.runOut, 'flow', curve)], source: 'The line asks less than the last point of the datasheet' });
  }
  const { innerDiameter, hazenWilliamsC } = line.line;
  return working({
    ...base, formula: 'H = h_s + h_lid + L_e*S', solves: 'Q', tolerance: 1e-6, source: 'Pump and line agree; Hazen-Williams in SI', symbols: [
      symbol('Q', 'pumpFlow', duty.flow, 'flow'), symbol('H', 'pumpHead', duty.head, 'head', `${pointer}/head`), lift, lid,
      symbol('L_e', 'equivalentLength', sheet.item.equivalentLength, 'length', `/results/pumps/${index}/equivalentLength`),
      symbol('C', 'hazenWilliamsC', hazenWilliamsC, 'number', lineField(sheet, 'hazenWilliamsC')), bore(sheet),
    ],
    steps: [step('S', 'frictionSlope', '10.67*Q^1.852/(C^1.852*d^4.8704)', hazenWilliamsSlope(duty.flow, innerDiameter, hazenWilliamsC), 'slope')],
  });
}

function dutySheets(sheet: PumpSheet, name: 'dutyAtOff' | 'dutyAtOn'): Working[] {
  const { input, index, item, line } = sheet;
  const duty = item[name];
  const pointer = `/results/pumps/${index}/${name}`;
  const at = line.pump.id;
  return [
    working({
      result: `${pointer}/staticHead`, at, formula: 'h_s = z_l - z_b', value: duty.staticHead, unit: 'head', source: 'Geometry: highest of outlet water, lid and line', tolerance: 1e-6, symbols: [
        symbol('z_l', 'liftLevel', line.liftLevel, 'level', liftField(input, line)),
        symbol('z_b', 'basinWater', duty.basinLevel, 'level', fieldOf(input.document, line.basin.id, name === 'dutyAtOff' ? 'offLevel' : 'onLevel')),
      ],
    }),
    flowSheet(sheet, name, duty), headSheet(sheet, name, duty),
    working({
      result: `${pointer}/velocity`, at, formula: 'v = Q/(pi/4*d^2)', value: duty.velocity, unit: 'velocity', source: 'Flow over the bore of the line', tolerance: 1e-6,
      symbols: [symbol('Q', 'pumpFlow', duty.flow, 'flow', `${pointer}/flow`), pi, bore(sheet)],
    }),
  ];
}

function lengthSheet(sheet: PumpSheet): Working {
  const { input, index, item, line } = sheet;
  const fittings = line.line.fittings.map((fitting, at) => ({
    text: `n_${at + 1}*F_${at + 1}`,
    symbols: [
      symbol(`n_${at + 1}`, 'fittingCount', fitting.count, 'count', `${lineField(sheet, 'fittings')}/${at}/count`),
      symbol(`F_${at + 1}`, 'fittingLength', fitting.equivalentLength, 'length', `${lineField(sheet, 'fittings')}/${at}/equivalentLength`),
    ],
  }));
  const valve = input.document.system.parts.find((part) => part.kind === 'checkValve' && part.drainsTo === line.line.id);
  const check = line.checkValve && valve?.kind === 'checkValve' ? [symbol('F_v', 'checkValveLength', valve.equivalentLength, 'length', fieldOf(input.document, valve.id, 'equivalentLength'))] : [];
  return working({
    result: `/results/pumps/${index}/equivalentLength`, at: line.pump.id, formula: `L_e = ${['L', ...fittings.map(({ text }) => text), ...check.map((one) => one.symbol)].join(' + ')}`,
    value: item.equivalentLength, unit: 'length', source: 'Equivalent lengths of fittings, handbooks', symbols: [run(sheet), ...fittings.flatMap(({ symbols }) => symbols), ...check],
  });
}

function returnSheets(sheet: PumpSheet): Working[] {
  const { input, index, item, line } = sheet;
  const at = line.pump.id;
  const pointer = `/results/pumps/${index}`;
  const content = { at, formula: 'V = pi/4*d^2*L', unit: 'volume', source: 'Geometry', symbols: [pi, bore(sheet), run(sheet)] };
  const basin = input.context.model.basins.findIndex((store) => store.id === line.basin.id);
  const store = input.context.model.basins[basin]!;
  const between = store.storage.volume(store.onLevel) - store.storage.volume(store.offLevel);
  const flow = symbol('Q', 'pumpFlow', item.dutyAtOff.flow, 'flow', `${pointer}/dutyAtOff/flow`);
  const weepFlow = symbol('Q_w', 'weepFlow', item.weepFlow, 'flow', `${pointer}/weepFlow`);
  const weep = line.weep === null
    ? { formula: 'Q_w = 0*h', symbols: [symbol('h', 'pumpHead', item.dutyAtOff.head, 'head', `${pointer}/dutyAtOff/head`)], source: 'No weep hole is drawn' }
    : {
      formula: 'Q_w = C*pi/4*d_w^2*sqrt(2*g*max(0, h))', source: 'Orifice, N.J.A.C. 7:9A-9.7', symbols: [
        symbol('C', 'coefficient', DRILLED_HOLE, 'number'), pi, symbol('d_w', 'weepDiameter', line.weep.diameter, 'diameter', fieldOf(input.document, line.weep.id, 'diameter')),
        symbol('g', 'freeFall', GRAVITY, 'acceleration'), symbol('h', 'pumpHead', item.dutyAtOff.head, 'head', `${pointer}/dutyAtOff/head`),
      ],
    };
  return [
    working({ ...content, result: `${pointer}/lineVolume`, value: item.lineVolume }), working({ ...content, result: `${pointer}/runBack`, value: item.runBack }),
    working({
      result: `${pointer}/runBackShare`, at, formula: 'r = V/V_w', value: item.runBackShare, unit: 'percent', source: 'Line content over the volume between start and stop', tolerance: 1e-6,
      symbols: [symbol('V', 'runBack', item.runBack, 'volume', `${pointer}/runBack`), symbol('V_w', 'betweenLevels', between, 'volume')],
    }),
    working({ ...weep, result: `${pointer}/weepFlow`, at, value: item.weepFlow, unit: 'flow', tolerance: 1e-6 }),
    working({
      result: `${pointer}/weepShare`, at, formula: item.dutyAtOff.flow > 0 ? 'r = Q_w/Q' : 'r = 0*Q_w', value: item.weepShare, unit: 'percent', source: 'Weep over pump flow, check N2',
      symbols: [weepFlow, flow], tolerance: 1e-6,
    }),
  ];
}

export function pumpWorkings(input: WorkingInput): Working[] {
  return input.results.pumps.flatMap((item, index) => {
    const sheet: PumpSheet = { input, index, item, line: pumpLineOf(input.document, partById(input.document, item.part) as Pump) };
    return [lengthSheet(sheet), ...dutySheets(sheet, 'dutyAtOff'), ...dutySheets(sheet, 'dutyAtOn'), ...returnSheets(sheet)];
  });
}
