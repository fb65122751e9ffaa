import type { Electrical } from '../document/document.ts';
import { longestOutage } from '../evaluate/outage.ts';
import type { Finding, Remedy } from '../results/results.ts';
import type { RemedyCode } from './codes.ts';
import { partsOf } from '../routing/pathParts.ts';
import { graded, stated, type CheckInput } from './finding.ts';
import { limits } from './limits.ts';

const code = 'NEC 422.5 and 300.5 as adopted locally; a licensed electrician decides';
const set = (field: keyof Electrical, value: boolean | string, remedy: RemedyCode): Remedy =>
  ({ code: remedy, params: {}, patch: [{ path: `/construction/electrical/${field}`, value }] });

/** E1 to E4: circuit, voltage drop, burial and alarm of a pumped system. */
export function electrical({ document }: CheckInput): Finding[] {
  if (partsOf(document, 'pump').length === 0) return [];
  const supply = document.construction.electrical;
  if (supply === null) return [stated('E1', 'missing', 'stop', null, {}, code)];
  return [...circuit(supply), ...voltageDrop(supply), stated('E3', 'burial', 'note', null, {}, code), alarm(supply)];
}

function circuit(supply: Electrical): Finding[] {
  if (supply.extensionCord) return [stated('E1', 'extensionCord', 'stop', null, {}, code, set('extensionCord', false, 'remedy.noCord'))];
  if (!supply.gfci) return [stated('E1', 'noGfci', 'stop', null, {}, code, set('gfci', true, 'remedy.gfci'))];
  if (!supply.dedicatedCircuit) return [stated('E1', 'shared', 'caution', null, {}, code, set('dedicatedCircuit', true, 'remedy.dedicated'))];
  return [stated('E1', 'ok', 'note', null, {}, code)];
}

/** Drop along both conductors: 2 L I r / V. Source: Ohm's law; limit of the NEC informational note. */
function voltageDrop(supply: Electrical): Finding[] {
  const drop = (2 * supply.runLength * supply.current * supply.conductorResistance) / supply.voltage;
  return graded('E2', 'E2', drop, null, { pass: 'ok', warn: 'drop', fail: 'dropLarge' }, { drop, length: supply.runLength });
}

function alarm(supply: Electrical): Finding {
  const source = 'Common practice: the alarm does not hang on the pump\'s circuit';
  if (supply.alarm === 'differentCircuit') return stated('E4', 'ok', 'note', null, {}, source);
  const remedy = set('alarm', 'differentCircuit', 'remedy.alarmCircuit');
  if (supply.alarm === 'none') return stated('E4', 'missing', 'stop', null, {}, source, remedy);
  return stated('E4', 'sameCircuit', 'caution', null, {}, source, remedy);
}

/** E5: longest power cut that floods nothing, whenever it starts. A backup of its own turns a stop into a caution. */
export function outageChecks({ document, results }: CheckInput): Finding[] {
  if (results.outage === null) return [];
  const { longestSafe, returnPeriod } = results.outage;
  const params = { duration: longestSafe, returnPeriod };
  if (longestSafe >= longestOutage) return [stated('E5', 'long', 'note', null, params, limits.E5.source)];
  const backed = (document.construction.electrical?.backup ?? 'none') !== 'none';
  const found = graded('E5', 'E5', longestSafe, null, { pass: 'ok', warn: 'short', fail: 'tooShort' }, params);
  return backed ? found.map((item) => (item.severity === 'stop' ? { ...item, severity: 'caution' as const } : item)) : found;
}

/** Work near a pool, a footing or a termite zone: others decide. */
export function licensedTrades({ document }: CheckInput): Finding[] {
  const { construction } = document;
  const found: Finding[] = [];
  if (construction.poolWithin3m) found.push(stated('E1', 'poolBonding', 'caution', null, {}, 'NEC 680.26, from memory; a licensed electrician decides'));
  if (construction.trenchNearFooting) found.push(stated('G6', 'underFooting', 'refer', null, {}, 'IRC P2604.4, from memory: no trench inside the 45 degree plane below a footing'));
  else if (document.construction.trenches.length > 0) found.push(stated('G6', 'ok', 'note', null, {}, 'IRC P2604.4, from memory'));
  if (construction.foundationWithin1ft) found.push(stated('G6', 'termiteZone', 'caution', null, {}, 'Common practice: ground disturbed at a foundation can end a termite contract'));
  return found;
}
