import { FOOT } from '../common/constants.ts';
import type { DesignDocument, Electrical } from '../document/document.ts';
import { longestOutage } from '../evaluate/outage.ts';
import type { Finding, Params, Remedy } from '../results/results.ts';
import type { RemedyCode } from './codes.ts';
import { partsOf } from '../routing/pathParts.ts';
import { graded, ruled, stated, type CheckInput } from './finding.ts';
import { judge } from './limit.ts';
import type { LimitId } from './limits.ts';
import { remedyOf } from './patch.ts';

const code = 'NEC 422.5 and 300.5 as adopted locally; a licensed electrician decides';
const set = (field: keyof Electrical | 'burial/depth', value: boolean | string | number, remedy: RemedyCode, params: Params = {}) => (): Remedy =>
  remedyOf(remedy, params, [{ path: `/construction/electrical/${field}`, value }]);

/** E1 to E4: circuit, voltage drop, burial and alarm of a pumped system. */
export function electrical(input: CheckInput): Finding[] {
  const { document } = input;
  if (partsOf(document, 'pump').length === 0) return [];
  const supply = document.construction.electrical;
  if (supply === null) return [stated('E1', 'missing', 'stop', code, { at: null })];
  return [...circuit(document, supply), ...voltageDrop(input, supply), ...burial(input, supply), alarm(supply)];
}

/** Water never stands higher than the rims of the hollows and of the basins. */
function floodLevel(document: DesignDocument): number {
  const rims = [...document.site.lowSpots.map(({ rimLevel }) => rimLevel), ...partsOf(document, 'basin').map(({ rimLevel }) => rimLevel)];
  return rims.reduce((high, level) => Math.max(high, level), -Infinity);
}

/** Receptacles stand this far above the flood. Source: ours. */
const aboveFlood = 1 * FOOT;

function circuit(document: DesignDocument, supply: Electrical): Finding[] {
  const found: Finding[] = [];
  const flood = floodLevel(document);
  if (supply.extensionCord) found.push(stated('E1', 'extensionCord', 'stop', code, { at: null, remedy: set('extensionCord', false, 'remedy.noCord') }));
  if (!supply.gfci) found.push(stated('E1', 'noGfci', 'stop', code, { at: null, remedy: set('gfci', true, 'remedy.gfci') }));
  if (supply.receptacleLevel !== null && supply.receptacleLevel < flood) {
    const level = flood + aboveFlood;
    found.push(stated('E1', 'floodable', 'stop', code, { at: null, params: { level: supply.receptacleLevel, flood }, remedy: set('receptacleLevel', level, 'remedy.raiseReceptacle', { level }) }));
  }
  if (!supply.dedicatedCircuit) found.push(stated('E1', 'shared', 'caution', code, { at: null, remedy: set('dedicatedCircuit', true, 'remedy.dedicated') }));
  return found.length > 0 ? found : [stated('E1', 'ok', 'note', code, { at: null })];
}

/** Resistance of copper at 20 C [ohm/m] by wire gauge. Source: standard wire tables, from memory. */
const wires: readonly (readonly [gauge: string, resistance: number])[] = [['12 AWG', 0.00521], ['10 AWG', 0.003277], ['8 AWG', 0.002061], ['6 AWG', 0.001296], ['4 AWG', 0.000815]];

/** Drop along both conductors: 2 L I r / V. Source: Ohm's law; limit of the NEC informational note. */
function voltageDrop(input: CheckInput, supply: Electrical): Finding[] {
  const dropOf = (resistance: number): number => (2 * supply.runLength * supply.current * resistance) / supply.voltage;
  const drop = dropOf(supply.conductorResistance);
  const thicker = (): Remedy | null => {
    const wire = wires.find(([, resistance]) => resistance < supply.conductorResistance && judge(dropOf(resistance), input.limits.E2) === 'pass');
    return wire === undefined ? null : set('conductorResistance', wire[1], 'remedy.thickerWire', { gauge: wire[0] })();
  };
  return graded(input, 'E2', 'E2', drop, { pass: 'ok', warn: 'drop', fail: 'dropLarge' }, { at: null, params: { drop, length: supply.runLength }, remedy: thicker });
}

const burialLimit: Readonly<Record<NonNullable<Electrical['burial']>['method'], LimitId>> = { direct: 'E3Direct', conduit: 'E3Conduit', gfciCable: 'E3Cable' };

function burial(input: CheckInput, supply: Electrical): Finding[] {
  if (supply.burial === null) return [stated('E3', 'burial', 'note', code, { at: null })];
  const { method, depth } = supply.burial;
  const limit = burialLimit[method];
  const wanted = input.limits[limit].pass;
  return graded(input, 'E3', limit, depth, { pass: 'ok', warn: 'shallow', fail: 'shallow' }, { at: null, params: { depth }, remedy: set('burial/depth', wanted, 'remedy.deeperCable', { depth: wanted }) });
}

function alarm(supply: Electrical): Finding {
  const source = 'Common practice: the alarm does not hang on the pump\'s circuit';
  if (supply.alarm === 'differentCircuit') return stated('E4', 'ok', 'note', source, { at: null });
  const remedy = set('alarm', 'differentCircuit', 'remedy.alarmCircuit');
  if (supply.alarm === 'none') return stated('E4', 'missing', 'stop', source, { at: null, remedy });
  return stated('E4', 'sameCircuit', 'caution', source, { at: null, remedy });
}

/** E5: longest power cut that floods nothing, whenever it starts. A backup of its own turns a stop into a caution. */
export function outageChecks(input: CheckInput): Finding[] {
  const { document, results, limits } = input;
  if (results.outage === null) return [];
  const { longestSafe, returnPeriod } = results.outage;
  const { electrical: supply } = document.construction;
  const backed = (supply?.backup ?? 'none') !== 'none';
  const remedy = () => (supply === null || backed ? null : set('backup', 'battery', 'remedy.backup')());
  const where = { at: null, params: { duration: longestSafe, returnPeriod }, remedy };
  if (longestSafe >= longestOutage) return [ruled(input, 'E5', 'E5', 'long', 'note', where)];
  const verdict = judge(longestSafe, limits.E5);
  if (backed && verdict !== 'pass') return [ruled(input, 'E5', 'E5', 'backed', 'caution', where)];
  return graded(input, 'E5', 'E5', longestSafe, { pass: 'ok', warn: 'short', fail: 'tooShort' }, where);
}

/** Work near a pool: its bonding is a licensed electrician's. */
export function poolBonding({ document }: CheckInput): Finding[] {
  return document.construction.poolWithin3m ? [stated('E1', 'poolBonding', 'caution', 'NEC 680.26, from memory; a licensed electrician decides', { at: null })] : [];
}
