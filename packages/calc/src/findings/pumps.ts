import type { Finding, PumpResult } from '../results/results.ts';
import type { Pump } from '../document/document.ts';
import { groundWaterInto } from '../evaluate/flows.ts';
import { partsOf, pathFrom } from '../routing/pathParts.ts';
import { pumpLineOf } from '../routing/pumpLine.ts';
import { graded, ruled, stated, type CheckInput } from './finding.ts';
import { judge } from './limit.ts';
import { fieldsOf, remedyOf, setFields } from './patch.ts';
import { otherLine } from './remedies/lines.ts';

function forPumps(input: CheckInput, check: (pump: Pump, result: PumpResult) => Finding[]): Finding[] {
  return partsOf(input.document, 'pump').flatMap((pump) => check(pump, input.results.pumps.find((item) => item.part === pump.id)!));
}

/** Distance of a duty from the middle of the curve, as a share of its greatest flow. */
const fromMiddle = (share: number): number => Math.abs(share - 0.5);

/** P1, P5: where the duty stands on the datasheet, and lift against shut-off. */
export function duty(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return forPumps(input, (pump, result) => {
    const { curve } = pumpLineOf(document, pump);
    const { flow, head, staticHead } = result.dutyAtOff;
    const params = { pump: pump.name, flow, head, lift: staticHead, shutOff: curve.shutOff };
    const other = () => otherLine(document, pump, limits, ({ share }) => judge(fromMiddle(share), limits.P1) === 'pass');
    const where = { at: pump.id, params, remedy: other };
    const lift = graded(input, 'P5', 'P5', staticHead / curve.shutOff, { pass: 'ok', warn: 'highLift', fail: 'tooHigh' }, { at: pump.id, params });
    if (flow <= 0) return [ruled(input, 'P1', 'P1', 'noFlow', 'stop', { at: pump.id, params }), ...lift];
    if (flow >= curve.runOut * (1 - 1e-9)) return [ruled(input, 'P1', 'P1', 'beyondCurve', 'stop', where), ...lift];
    return [...graded(input, 'P1', 'P1', fromMiddle(flow / curve.runOut), { pass: 'ok', warn: 'endOfCurve', fail: 'endOfCurve' }, where), ...lift];
  });
}

/** P3: where ground water flows in for ever, the pump must keep well ahead of it. */
export function groundWater(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return forPumps(input, (pump, result) => {
    const inflow = groundWaterInto(document, pump.basin);
    if (inflow === 0) return [];
    const params = { pump: pump.name, flow: result.dutyAtOff.flow, inflow };
    const remedy = () => otherLine(document, pump, limits, ({ flow }) => judge(flow / inflow, limits.P3) === 'pass');
    return graded(input, 'P3', 'P3', result.dutyAtOff.flow / inflow, { pass: 'ok', warn: 'tight', fail: 'short' }, { at: pump.id, params, remedy });
  });
}

/** P4: velocity in the line. */
export function lineVelocity(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return forPumps(input, (pump, result) => {
    const { velocity } = result.dutyAtOff;
    const remedy = () => otherLine(document, pump, limits, (left) => judge(left.velocity, limits.P4Slow) === 'pass' && judge(left.velocity, limits.P4Fast) === 'pass');
    const where = { at: pump.id, params: { pump: pump.name, velocity }, remedy };
    const slow = graded(input, 'P4', 'P4Slow', velocity, { warn: 'slow', fail: 'slow' }, where);
    return slow.length > 0 ? slow : graded(input, 'P4', 'P4Fast', velocity, { pass: 'ok', warn: 'fast', fail: 'tooFast' }, where);
  });
}

/** P6: what comes through the grate must go through the pump. */
export function solids(input: CheckInput): Finding[] {
  const { document } = input;
  return forPumps(input, (pump) => {
    const channels = partsOf(document, 'channel').filter((channel) => pathFrom(document, channel.id).some(({ id }) => id === pump.basin));
    const slot = channels.reduce((most, { grate }) => Math.max(most, grate.slotWidth), 0);
    const params = { pump: pump.name, solids: pump.solids, slot };
    const wide = channels.filter(({ grate }) => grate.slotWidth > pump.solids);
    const narrow = () => remedyOf('remedy.narrowGrates', { pump: pump.name, slot: pump.solids }, wide.flatMap((channel) => fieldsOf(document, channel, { 'grate/slotWidth': pump.solids })));
    if (pump.solids < slot - 1e-6 && pump.solids > 0) return [ruled(input, 'P6', 'P6', 'smallerThanSlot', 'stop', { at: pump.id, params, remedy: narrow })];
    return graded(input, 'P6', 'P6', pump.solids, { pass: 'ok', warn: 'basket', fail: 'tooSmall' }, { at: pump.id, params });
  });
}

/** P8: one pump without a second; how long the site can do without it, and whether a second one is called for. */
export function secondPump(input: CheckInput): Finding[] {
  const { document, results, limits } = input;
  if (results.outage === null) return [];
  const { longestSafe, returnPeriod } = results.outage;
  const floods = results.freeboards.some((item) => item.returnPeriod === document.rain.designReturnPeriod && judge(item.withoutSystem, limits.L5) === 'fail');
  return partsOf(document, 'basin').flatMap((basin) => {
    const pumps = partsOf(document, 'pump').filter((pump) => pump.basin === basin.id);
    const first = pumps[0];
    if (first === undefined) return [];
    const where = { at: first.id, params: { pump: first.name, duration: longestSafe, returnPeriod } };
    if (pumps.length > 1) return [stated('P8', 'ok', 'note', 'Ours', where)];
    const wanted = floods && judge(longestSafe, limits.E5) === 'fail';
    return [ruled(input, 'P8', 'E5', wanted ? 'secondWanted' : 'onePump', wanted ? 'caution' : 'note', where)];
  });
}

/** The usual smaller weep hole, 1/8 in [m]. */
const smallWeep = 0.003175;

/** N1, N2: water that comes back: the line without a check valve, the weep hole with one. */
export function returns(input: CheckInput): Finding[] {
  const { document } = input;
  return forPumps(input, (pump, result) => {
    const line = pumpLineOf(document, pump);
    const params = { pump: pump.name, volume: result.runBack, share: result.runBackShare, weep: result.weepFlow, weepShare: result.weepShare };
    const valve = pathFrom(document, pump.id).find((part) => part.kind === 'checkValve');
    const fit = () => (valve === undefined ? null : setFields(document, valve, { present: true }, 'remedy.checkValve', { pump: pump.name }));
    if (!line.checkValve) return graded(input, 'N1', 'N1', result.runBackShare, { pass: 'ok', warn: 'runBack', fail: 'runBackLarge' }, { at: pump.id, params, remedy: fit });
    const { weep } = line;
    if (weep === null) return [ruled(input, 'N2', 'N2', 'missing', 'caution', { at: pump.id, params })];
    const smaller = () => (weep.diameter > smallWeep ? setFields(document, weep, { diameter: smallWeep }, 'remedy.smallerWeep', { pump: pump.name, diameter: smallWeep }) : null);
    return graded(input, 'N2', 'N2', result.weepShare, { pass: 'ok', warn: 'large', fail: 'tooLarge' }, { at: pump.id, params, remedy: smaller });
  });
}
