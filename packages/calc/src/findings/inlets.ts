import { GRAVITY } from '../common/constants.ts';
import type { CatchBasin, Channel } from '../document/document.ts';
import { inletPeak } from '../evaluate/flows.ts';
import { ALLOWED_GRATE_HEAD, sagGrateFlow } from '../inlet/sagGrate.ts';
import { PI } from '../math/constants.ts';
import type { Finding } from '../results/results.ts';
import { partById, partsOf } from '../routing/pathParts.ts';
import { graded, setPart, stated, type CheckInput } from './finding.ts';
import { limits } from './limits.ts';

const inletsOf = ({ document }: CheckInput): (Channel | CatchBasin)[] => [...partsOf(document, 'channel'), ...partsOf(document, 'catchBasin')];

/** I1: grate at an inch of head with its clogging, against the design flow. */
export function grateCapacity(input: CheckInput): Finding[] {
  const { document } = input;
  return inletsOf(input).flatMap((inlet) => {
    const grate = inlet.kind === 'channel'
      ? { perimeter: 2 * (inlet.length + inlet.width), openArea: inlet.length * inlet.width * inlet.grate.openAreaRatio, clogging: inlet.grate.clogging }
      : { perimeter: inlet.gratePerimeter, openArea: inlet.grateOpenArea, clogging: inlet.clogging };
    if (grate.openArea === 0) return [stated('I1', 'closed', 'stop', inlet.id, { part: inlet.name }, limits.I1.source)];
    const { capacity } = sagGrateFlow(grate, ALLOWED_GRATE_HEAD);
    const flow = inletPeak(document, inlet, document.rain.designReturnPeriod);
    const params = { part: inlet.name, capacity, flow, head: ALLOWED_GRATE_HEAD };
    return graded('I1', 'I1', flow > 0 ? capacity / flow : 99, inlet.id, { pass: 'ok', warn: 'tight', fail: 'short' }, params);
  });
}

const loadRank = { foot: 0, car: 1, truck: 2 } as const;

/** I2, I3, I5: slots, load class and locking of channel grates. */
export function grates({ document }: CheckInput): Finding[] {
  return partsOf(document, 'channel').flatMap((channel) => {
    const { grate } = channel;
    const params = { part: channel.name, slot: grate.slotWidth };
    const heel = grate.slotWidth <= limits.I2Heel.pass + 1e-6 || channel.use === 'car';
    const fits = loadRank[grate.loadClass] >= loadRank[channel.use];
    return [
      ...graded('I2', 'I2', grate.slotWidth, channel.id, { pass: heel ? 'ok' : 'heel', fail: 'wide' }, params),
      fits ? stated('I3', 'ok', 'note', channel.id, params, 'Load classes of grates: the class fits the traffic')
        : stated('I3', 'weak', 'stop', channel.id, params, 'Load classes of grates: the class fits the traffic'),
      grate.locked ? stated('I5', 'ok', 'note', channel.id, params, 'Common practice: grates are screwed or clipped')
        : stated('I5', 'loose', 'stop', channel.id, params, 'Common practice: grates are screwed or clipped'),
    ];
  });
}

/** I4: under trees a box needs a sump that can be cleaned; a channel has none and is flushed. */
export function leafLoad({ document }: CheckInput): Finding[] {
  if (!document.construction.treesNear) return [];
  const boxes = partsOf(document, 'catchBasin').flatMap((box) =>
    graded('I4', 'I4', box.sumpDepth, box.id, { pass: 'ok', warn: 'sumpSmall', fail: 'sumpMissing' }, { part: box.name, depth: box.sumpDepth }));
  const channels = partsOf(document, 'channel').map((channel) => stated('I4', 'flushChannel', 'note', channel.id, { part: channel.name }, limits.I4.source));
  return [...boxes, ...channels];
}

/** C1: depth with the real end against the body, at the design storm. */
export function channelDepth({ document, results }: CheckInput): Finding[] {
  return results.channels.filter((item) => item.returnPeriod === document.rain.designReturnPeriod).flatMap((item) => {
    const channel = partById(document, item.part) as Channel;
    const params = { part: channel.name, flow: item.flow, depth: item.depth, body: channel.depth, share: item.share, returnPeriod: item.returnPeriod };
    return graded('C1', 'C1', item.share, item.part, { pass: 'ok', warn: 'nearFull', fail: 'overflows' }, params);
  });
}

/** C2, C3: fall of the floor, what it costs in depth, and the pipe that takes over. */
export function channelFall({ document }: CheckInput): Finding[] {
  return partsOf(document, 'channel').flatMap((channel) => {
    const slope = (channel.invertUp - channel.invertDown) / channel.length;
    const params = { part: channel.name, slope, back: -slope, growth: channel.invertUp - channel.invertDown };
    const remedy = setPart(document, channel.id, 'invertDown', channel.invertUp, 'remedy.levelChannel', { part: channel.name });
    const found = graded('C2', 'C2', slope, channel.id, { pass: slope > 1e-9 ? 'ok' : 'level', warn: 'backFall', fail: 'backFall' }, params, remedy);
    const growth = graded('C3', 'C3', channel.invertUp - channel.invertDown, channel.id, { pass: 'ok', warn: 'deep', fail: 'deep' }, params);
    const next = partById(document, channel.drainsTo);
    if (next?.kind !== 'pipe' || next.invertUp <= channel.invertDown + 1e-4) return [...found, ...growth];
    const step = { part: channel.name, pipe: next.name, step: next.invertUp - channel.invertDown };
    const lower = setPart(document, next.id, 'invertUp', channel.invertDown, 'remedy.lowerPipe', { pipe: next.name });
    return [...found, ...growth, stated('C3', 'pipeAbove', 'stop', channel.id, step, limits.C3.source, lower)];
  });
}

/** Orifice coefficient of a channel outlet. Source: check C4, common practice. */
const outletCoefficient = 0.62;

/** C4: outlet as an orifice under the full depth of the body, for the whole flow. */
export function channelOutlet({ document }: CheckInput): Finding[] {
  return partsOf(document, 'channel').flatMap((channel) => {
    if (channel.outletDiameter === null) return [];
    const area = (PI / 4) * channel.outletDiameter * channel.outletDiameter;
    const capacity = outletCoefficient * area * Math.sqrt(2 * GRAVITY * channel.depth);
    const flow = inletPeak(document, channel, document.rain.designReturnPeriod);
    const params = { part: channel.name, capacity, flow };
    return graded('C4', 'C4', flow > 0 ? capacity / flow : 99, channel.id, { pass: 'ok', warn: 'tight', fail: 'short' }, params);
  });
}

/** C5: concrete around the channel. */
export function channelSurround({ document }: CheckInput): Finding[] {
  return partsOf(document, 'channel').flatMap((channel) => {
    const limit = channel.use === 'car' ? 'C5Car' : 'C5Foot';
    const remedy = setPart(document, channel.id, 'surround', limits[limit].pass, 'remedy.thickerSurround', { part: channel.name, thickness: limits[limit].pass });
    return graded('C5', limit, channel.surround, channel.id, { pass: 'ok', warn: 'thin', fail: 'thin' }, { part: channel.name, thickness: channel.surround }, remedy);
  });
}
