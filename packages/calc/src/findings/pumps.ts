import type { Finding, PumpResult } from '../results/results.ts';
import type { Pump } from '../document/document.ts';
import { groundWaterInto } from '../evaluate/flows.ts';
import { partsOf } from '../routing/pathParts.ts';
import { pumpLineOf } from '../routing/pumpLine.ts';
import { graded, setPart, stated, type CheckInput } from './finding.ts';
import { judge, limits } from './limits.ts';

function forPumps(input: CheckInput, check: (pump: Pump, result: PumpResult) => Finding[]): Finding[] {
  return partsOf(input.document, 'pump').flatMap((pump) => check(pump, input.results.pumps.find((item) => item.part === pump.id)!));
}

/** P1, P5: where the duty stands on the datasheet, and lift against shut-off. */
export function duty(input: CheckInput): Finding[] {
  return forPumps(input, (pump, result) => {
    const { curve } = pumpLineOf(input.document, pump);
    const { flow, head, staticHead } = result.dutyAtOff;
    const params = { pump: pump.name, flow, head, lift: staticHead, shutOff: curve.shutOff };
    if (flow <= 0) return [stated('P1', 'noFlow', 'stop', pump.id, params, limits.P1.source)];
    if (flow >= curve.runOut * (1 - 1e-9)) return [stated('P1', 'beyondCurve', 'stop', pump.id, params, limits.P1.source)];
    return [
      ...graded('P1', 'P1', Math.abs(flow / curve.runOut - 0.5), pump.id, { pass: 'ok', warn: 'endOfCurve' }, params),
      ...graded('P5', 'P5', staticHead / curve.shutOff, pump.id, { pass: 'ok', warn: 'highLift', fail: 'tooHigh' }, params),
    ];
  });
}

/** P3: where ground water flows in for ever, the pump must keep well ahead of it. */
export function groundWater(input: CheckInput): Finding[] {
  return forPumps(input, (pump, result) => {
    const inflow = groundWaterInto(input.document, pump.basin);
    if (inflow === 0) return [];
    return graded('P3', 'P3', result.dutyAtOff.flow / inflow, pump.id, { pass: 'ok', warn: 'tight', fail: 'short' }, { pump: pump.name, flow: result.dutyAtOff.flow, inflow });
  });
}

/** P4: velocity in the line. */
export function lineVelocity(input: CheckInput): Finding[] {
  return forPumps(input, (pump, result) => {
    const params = { pump: pump.name, velocity: result.dutyAtOff.velocity };
    if (judge(result.dutyAtOff.velocity, limits.P4Slow) !== 'pass') return [stated('P4', 'slow', 'stop', pump.id, params, limits.P4Slow.source)];
    return graded('P4', 'P4Fast', result.dutyAtOff.velocity, pump.id, { pass: 'ok', warn: 'fast', fail: 'tooFast' }, params);
  });
}

/** P6: what comes through the grate must go through the pump. */
export function solids(input: CheckInput): Finding[] {
  const slots = partsOf(input.document, 'channel').map((channel) => channel.grate.slotWidth);
  const slot = slots.reduce((most, width) => Math.max(most, width), 0);
  return forPumps(input, (pump) => {
    const params = { pump: pump.name, solids: pump.solids, slot };
    if (pump.solids < slot - 1e-6) return [stated('P6', 'smallerThanSlot', 'stop', pump.id, params, limits.P6.source)];
    return graded('P6', 'P6', pump.solids, pump.id, { pass: 'ok', warn: 'basket', fail: 'tooSmall' }, params);
  });
}

/** P8: one pump without a second; how long the site can do without it. */
export function secondPump({ document, results }: CheckInput): Finding[] {
  if (results.outage === null) return [];
  const { longestSafe, returnPeriod } = results.outage;
  return partsOf(document, 'basin').flatMap((basin) => {
    const pumps = partsOf(document, 'pump').filter((pump) => pump.basin === basin.id);
    if (pumps.length !== 1) return [];
    return [stated('P8', 'onePump', 'note', pumps[0]!.id, { pump: pumps[0]!.name, duration: longestSafe, returnPeriod }, 'Ours')];
  });
}

/** N1, N2: water that comes back: the line without a check valve, the weep hole with one. */
export function returns(input: CheckInput): Finding[] {
  const { document } = input;
  return forPumps(input, (pump, result) => {
    const line = pumpLineOf(document, pump);
    const params = { pump: pump.name, volume: result.runBack, share: result.runBackShare, weep: result.weepFlow, weepShare: result.weepShare };
    if (!line.checkValve) return graded('N1', 'N1', result.runBackShare, pump.id, { pass: 'ok', warn: 'runBack', fail: 'runBackLarge' }, params);
    if (line.weep === null) return [stated('N2', 'missing', 'caution', pump.id, params, limits.N2.source)];
    const smaller = setPart(document, line.weep.id, 'diameter', 0.003175, 'remedy.smallerWeep', { pump: pump.name });
    return graded('N2', 'N2', result.weepShare, pump.id, { pass: 'ok', warn: 'large', fail: 'tooLarge' }, params, smaller);
  });
}
