import { GRAVITY } from '../common/constants.ts';
import type { CatchBasin, Channel } from '../document/document.ts';
import { inletPeak } from '../evaluate/flows.ts';
import { ALLOWED_GRATE_HEAD, LOW_HEAD, sagGrateFlow } from '../inlet/sagGrate.ts';
import { PI } from '../math/constants.ts';
import type { Finding } from '../results/results.ts';
import { partById, partsOf } from '../routing/pathParts.ts';
import { graded, isMet, ruled, stated, type CheckInput } from './finding.ts';
import { setFields } from './patch.ts';
import { largerGrate, largerOutlet, levelChannel, pipeAtFloor, shallowerFlow } from './remedies/channels.ts';

const inletsOf = ({ document }: CheckInput): (Channel | CatchBasin)[] => [...partsOf(document, 'channel'), ...partsOf(document, 'catchBasin')];

/** Flows below the published range of heads are taken 25 % either way. Source: ours. */
const lowHeadShare = 0.75;

function grateAt(input: CheckInput, inlet: Channel | CatchBasin): Finding[] {
  const { document, limits } = input;
  const grate = inlet.kind === 'channel'
    ? { perimeter: 2 * (inlet.length + inlet.width), openArea: inlet.length * inlet.width * inlet.grate.openAreaRatio, clogging: inlet.grate.clogging }
    : { perimeter: inlet.gratePerimeter, openArea: inlet.grateOpenArea, clogging: inlet.clogging };
  const remedy = () => largerGrate(document, inlet, limits);
  if (grate.openArea === 0) return [ruled(input, 'I1', 'I1', 'closed', 'stop', { at: inlet.id, params: { part: inlet.name }, remedy })];
  const { capacity, belowPublishedHead } = sagGrateFlow(grate, ALLOWED_GRATE_HEAD);
  const flow = inletPeak(document, inlet, document.rain.designReturnPeriod);
  const ratio = flow > 0 ? capacity / flow : 99;
  const params = { part: inlet.name, capacity, flow, head: ALLOWED_GRATE_HEAD, least: lowHeadShare * capacity, lowHead: LOW_HEAD };
  const found = graded(input, 'I1', 'I1', ratio, { pass: 'ok', warn: 'tight', fail: 'short' }, { at: inlet.id, params, remedy });
  if (!belowPublishedHead) return found;
  return [...found, ...graded(input, 'M', 'MGrate', lowHeadShare * ratio, { pass: 'grateHead', warn: 'grateHeadShort' }, { at: inlet.id, params })];
}

/** I1: grate at an inch of head with its clogging, against the design flow; below 30 mm of head the flow is known to 25 %. */
export const grateCapacity = (input: CheckInput): Finding[] => inletsOf(input).flatMap((inlet) => grateAt(input, inlet));

const loadRank = { foot: 0, car: 1, truck: 2 } as const;
const loadSource = 'Load classes of grates: the class fits the traffic';
const lockSource = 'Common practice: grates are screwed or clipped';

/** I2, I3, I5: slots, load class and locking of channel grates. */
export function grates(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return partsOf(document, 'channel').flatMap((channel) => {
    const { grate } = channel;
    const at = channel.id;
    const params = { part: channel.name, slot: grate.slotWidth };
    const heel = isMet(input, 'I2Heel', grate.slotWidth) || channel.use === 'car';
    const fits = loadRank[grate.loadClass] >= loadRank[channel.use];
    const narrow = () => setFields(document, channel, { 'grate/slotWidth': limits.I2.pass }, 'remedy.narrowSlots', { part: channel.name, slot: limits.I2.pass });
    const stronger = () => setFields(document, channel, { 'grate/loadClass': channel.use }, 'remedy.strongerGrate', { part: channel.name });
    const lock = () => setFields(document, channel, { 'grate/locked': true }, 'remedy.lockGrate', { part: channel.name });
    return [
      ...graded(input, 'I2', 'I2', grate.slotWidth, { pass: heel ? 'ok' : 'heel', warn: 'wide', fail: 'wide' }, { at, params, remedy: narrow }),
      stated('I3', fits ? 'ok' : 'weak', fits ? 'note' : 'stop', loadSource, { at, params, remedy: stronger }),
      stated('I5', grate.locked ? 'ok' : 'loose', grate.locked ? 'note' : 'stop', lockSource, { at, params, remedy: lock }),
    ];
  });
}

/** I4: under trees a box needs a sump that can be cleaned; a channel has none and is flushed. */
export function leafLoad(input: CheckInput): Finding[] {
  const { document, limits } = input;
  if (!document.construction.treesNear) return [];
  const boxes = partsOf(document, 'catchBasin').flatMap((box) => {
    const remedy = () => setFields(document, box, { sumpDepth: limits.I4.pass }, 'remedy.deeperSump', { part: box.name, depth: limits.I4.pass });
    return graded(input, 'I4', 'I4', box.sumpDepth, { pass: 'ok', warn: 'sumpSmall', fail: 'sumpMissing' }, { at: box.id, params: { part: box.name, depth: box.sumpDepth }, remedy });
  });
  const channels = partsOf(document, 'channel').map((channel) => ruled(input, 'I4', 'I4', 'flushChannel', 'note', { at: channel.id, params: { part: channel.name } }));
  return [...boxes, ...channels];
}

/** C1: depth with the real end against the body, at the design storm. */
export function channelDepth(input: CheckInput): Finding[] {
  const { document, results, limits } = input;
  return results.channels.filter((item) => item.returnPeriod === document.rain.designReturnPeriod).flatMap((item) => {
    const channel = partById(document, item.part) as Channel;
    const params = { part: channel.name, flow: item.flow, depth: item.depth, body: channel.depth, share: item.share, returnPeriod: item.returnPeriod };
    const remedy = () => shallowerFlow(document, channel, limits);
    return graded(input, 'C1', 'C1', item.share, { pass: 'ok', warn: 'nearFull', fail: 'overflows' }, { at: item.part, params, remedy });
  });
}

function takeOver(input: CheckInput, channel: Channel): Finding[] {
  const { document, limits } = input;
  const next = partById(document, channel.drainsTo);
  if (next?.kind !== 'pipe' || next.invertUp <= channel.invertDown + 1e-4) return [];
  const params = { part: channel.name, pipe: next.name, step: next.invertUp - channel.invertDown };
  return [stated('C3', 'pipeAbove', 'stop', 'Geometry: water does not climb from the channel floor into its pipe', { at: channel.id, params, remedy: () => pipeAtFloor(document, channel, limits) })];
}

/** C2, C3: fall of the floor, what it costs in depth, and the pipe that takes over. */
export function channelFall(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return partsOf(document, 'channel').flatMap((channel) => {
    const slope = (channel.invertUp - channel.invertDown) / channel.length;
    const where = {
      at: channel.id, params: { part: channel.name, slope, back: -slope, growth: channel.invertUp - channel.invertDown }, remedy: () => levelChannel(document, channel, limits),
    };
    return [
      ...graded(input, 'C2', 'C2', slope, { pass: slope > 1e-9 ? 'ok' : 'level', warn: 'backFall', fail: 'backFall' }, where),
      ...graded(input, 'C3', 'C3', channel.invertUp - channel.invertDown, { pass: 'ok', warn: 'deep', fail: 'tooDeep' }, where),
      ...takeOver(input, channel),
    ];
  });
}

/** Orifice coefficient of a channel outlet. Source: check C4, common practice. */
const outletCoefficient = 0.62;

/** C4: outlet as an orifice under the full depth of the body, for the whole flow. */
export function channelOutlet(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return partsOf(document, 'channel').flatMap((channel) => {
    if (channel.outletDiameter === null) return [];
    const area = (PI / 4) * channel.outletDiameter * channel.outletDiameter;
    const capacity = outletCoefficient * area * Math.sqrt(2 * GRAVITY * channel.depth);
    const flow = inletPeak(document, channel, document.rain.designReturnPeriod);
    const share = flow > 0 ? capacity / flow : 99;
    const remedy = () => largerOutlet(document, channel, share, limits);
    return graded(input, 'C4', 'C4', share, { pass: 'ok', warn: 'tight', fail: 'short' }, { at: channel.id, params: { part: channel.name, capacity, flow }, remedy });
  });
}

/** C5: concrete around the channel. */
export function channelSurround(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return partsOf(document, 'channel').flatMap((channel) => {
    const limit = channel.use === 'car' ? 'C5Car' : 'C5Foot';
    const thickness = limits[limit].pass;
    const remedy = () => setFields(document, channel, { surround: thickness }, 'remedy.thickerSurround', { part: channel.name, thickness });
    return graded(input, 'C5', limit, channel.surround, { pass: 'ok', warn: 'thin', fail: 'tooThin' }, { at: channel.id, params: { part: channel.name, thickness: channel.surround }, remedy });
  });
}
