import { GRAVITY } from '../common/constants.ts';
import { criticalDepth } from '../channel/criticalDepth.ts';
import { spatiallyVariedFlow, type WaterSurface } from '../channel/spatiallyVariedFlow.ts';
import type { Channel } from '../document/document.ts';
import { sagGrateOf } from '../evaluate/collectParts.ts';
import { ALLOWED_GRATE_HEAD, GRATE_ORIFICE } from '../inlet/sagGrate.ts';
import { GRATE_WEIR } from '../inlet/weir.ts';
import { pow } from '../math/pow.ts';
import type { ChannelResult, Working } from '../results/results.ts';
import { inletsOf } from '../routing/buildModel.ts';
import { partById } from '../routing/pathParts.ts';
import { fieldOf, indexBy, step, symbol, working, type WorkingInput } from './working.ts';

type Profile = readonly { readonly x: number; readonly depth: number }[];

/** Friction on the wetted walls less the push of the sloping floor, between the greatest depth and the end, by trapezoids over a profile [m3]. */
function wallForce(profile: Profile, from: number, channel: Channel, flow: number, length: number): number {
  const slope = (channel.invertUp - channel.invertDown) / length;
  const pull = ({ x, depth }: Profile[number]): number => {
    const area = channel.width * depth;
    if (area === 0) return 0;
    const passing = (flow * x) / length;
    const friction = (channel.roughness * channel.roughness * passing * passing) / (area * area * pow(area / (channel.width + 2 * depth), 4 / 3));
    return area * (friction - slope);
  };
  let sum = 0;
  for (let i = from + 1; i < profile.length; i += 1) {
    const [left, right] = [profile[i - 1]!, profile[i]!];
    sum += ((pull(left) + pull(right)) / 2) * (right.x - left.x);
  }
  return sum;
}

const highest = (profile: Profile): number => profile.reduce((top, point, index) => (point.depth > profile[top]!.depth ? index : top), 0);

interface ChannelSheet {
  readonly input: WorkingInput;
  readonly index: number;
  readonly item: ChannelResult;
  readonly channel: Channel;
}

/** Depth by the balance of forces between its place and the end of the profile that the engine marched. */
function depthSheet({ input, index, item, channel }: ChannelSheet, field: 'depth' | 'depthFree', profile: Profile): Working {
  const side = item.flow / channel.outletSides;
  const length = channel.length / channel.outletSides;
  const top = highest(profile);
  const end = profile[profile.length - 1]!.depth;
  const force = wallForce(profile, top, channel, side, length);
  const passing = (side * profile[top]!.x) / length;
  const total = (side * side) / (GRAVITY * channel.width * end) + (channel.width * end * end) / 2 + force;
  const pointer = `/results/channels/${index}`;
  return working({
    result: `${pointer}/${field}`, at: channel.id, formula: 'M = Q_m^2/(g*B*y) + B*y^2/2', solves: 'y', value: item[field], unit: 'height', tolerance: 0.02,
    source: 'Spatially varied flow, momentum form, Chow 1959 section 12-2; the end by FHWA HDS-5; walls by Manning, summed along the profile',
    symbols: [
      symbol('Q', 'flowFromOneSide', side, 'flow', `${pointer}/flow`), symbol('B', 'channelWidth', channel.width, 'diameter', fieldOf(input.document, channel.id, 'width')),
      symbol('g', 'freeFall', GRAVITY, 'acceleration'), symbol('y_0', 'depthAtEnd', end, 'height', field === 'depth' ? `${pointer}/profile/${profile.length - 1}/depth` : null),
      symbol('F', 'wallForce', force, 'bulk', field === 'depth' ? `${pointer}/profile` : null),
      symbol('Q_m', 'flowAtGreatestDepth', passing, 'flow'), symbol('y', 'greatestDepth', item[field], 'height'),
    ],
    steps: [step('M', 'momentum', 'Q^2/(g*B*y_0) + B*y_0^2/2 + F', total, 'bulk')],
  });
}

function frictionlessSheet({ input, index, item, channel }: ChannelSheet): Working {
  const side = item.flow / channel.outletSides;
  return working({
    result: `/results/channels/${index}/depthFreeFrictionless`, at: channel.id, formula: 'y_up = sqrt(3)*y_c', value: item.depthFreeFrictionless, unit: 'height', tolerance: 1e-4,
    source: 'Level channel with even inflow, free end, no friction: Beij 1934, Chow 1959 section 12-2', symbols: [
      symbol('Q', 'flowFromOneSide', side, 'flow', `/results/channels/${index}/flow`), symbol('B', 'channelWidth', channel.width, 'diameter', fieldOf(input.document, channel.id, 'width')),
      symbol('g', 'freeFall', GRAVITY, 'acceleration'),
    ],
    steps: [step('y_c', 'criticalDepth', '(Q^2/(g*B^2))^(1/3)', side > 0 ? criticalDepth(side, channel.width) : 0, 'height')],
  });
}

function flowSheet({ input, index, item, channel }: ChannelSheet): Working {
  const { document, results } = input;
  const beside = inletsOf(document).map(({ part }) => part).filter((part) => part.lowSpot === channel.lowSpot);
  const peak = indexBy(results.peaks, (one) => one.returnPeriod === item.returnPeriod && one.target === channel.lowSpot);
  return working({
    result: `/results/channels/${index}/flow`, at: channel.id, formula: `Q = Q_p*S_own/(${beside.map((_, at) => `S_${at + 1}`).join(' + ')})`, value: item.flow, unit: 'flow',
    source: 'Inlets of one low spot share its flow by the length of their edge; ours', symbols: [
      symbol('Q_p', 'peakOntoLowSpot', results.peaks[peak]!.flow, 'flow', `/results/peaks/${peak}/flow`),
      symbol('S_own', 'inletEdge', channel.length, 'length', fieldOf(document, channel.id, 'length')),
      ...beside.map((part, at) => symbol(`S_${at + 1}`, 'inletEdge', part.kind === 'channel' ? part.length : part.gratePerimeter, 'length',
        fieldOf(document, part.id, part.kind === 'channel' ? 'length' : 'gratePerimeter'))),
    ],
  });
}

/** The profile with a free end, as the engine marches it; with the real end the evaluation holds it. */
function freeProfile({ item, channel }: ChannelSheet): WaterSurface['profile'] {
  const length = channel.length / channel.outletSides;
  const shape = { width: channel.width, length, slope: (channel.invertUp - channel.invertDown) / length, roughness: channel.roughness };
  return spatiallyVariedFlow(shape, item.flow / channel.outletSides, null, 60).profile;
}

export function channelWorkings(input: WorkingInput): Working[] {
  return input.results.channels.flatMap((item, index) => {
    const sheet: ChannelSheet = { input, index, item, channel: partById(input.document, item.part) as Channel };
    const { channel } = sheet;
    const share = working({
      result: `/results/channels/${index}/share`, at: channel.id, formula: 'r = y/D', value: item.share, unit: 'percent', source: 'Depth over the body of the channel, check C1',
      symbols: [
        symbol('y', 'greatestDepth', item.depth, 'height', `/results/channels/${index}/depth`), symbol('D', 'channelDepth', channel.depth, 'height', fieldOf(input.document, channel.id, 'depth')),
      ],
    });
    if (item.flow <= 0 || channel.shape !== 'rectangular') return [flowSheet(sheet), share];
    return [
      flowSheet(sheet), frictionlessSheet(sheet), depthSheet(sheet, 'depthFree', freeProfile(sheet)), depthSheet(sheet, 'depth', item.profile), share,
    ];
  });
}

export function grateWorkings({ document, results }: WorkingInput): Working[] {
  return results.grates.flatMap((item, index) => {
    const part = partById(document, item.part);
    if (part?.kind !== 'channel' && part?.kind !== 'catchBasin') return [];
    const { perimeter, openArea, clogging } = sagGrateOf(part);
    const field = (name: string): string => fieldOf(document, part.id, name);
    const capacity = working({
      result: `/results/grates/${index}/capacity`, at: part.id, formula: 'Q = min(C_w*P*k*h^1.5, C_o*A*k*sqrt(2*g*h))', value: item.capacity, unit: 'flow',
      source: 'Grate in a sag, FHWA HEC-22 chapter 4; one inch of head and half of it blocked are ours', symbols: [
        symbol('C_w', 'weirCoefficient', GRATE_WEIR, 'number'), symbol('P', 'grateEdge', perimeter, 'length', field(part.kind === 'channel' ? 'length' : 'gratePerimeter')),
        symbol('k', 'shareLeftOpen', clogging, 'percent', field(part.kind === 'channel' ? 'grate/clogging' : 'clogging')), symbol('h', 'grateHead', ALLOWED_GRATE_HEAD, 'height'),
        symbol('C_o', 'grateOrificeCoefficient', GRATE_ORIFICE, 'number'), symbol('A', 'grateOpening', openArea, 'area', field(part.kind === 'channel' ? 'grate/openAreaRatio' : 'grateOpenArea')),
        symbol('g', 'freeFall', GRAVITY, 'acceleration'),
      ],
    });
    const peak = indexBy(results.peaks, (one) => one.returnPeriod === document.rain.designReturnPeriod && one.target === part.lowSpot);
    const total = results.peaks[peak]?.flow ?? 0;
    const flow = working({
      result: `/results/grates/${index}/flow`, at: part.id, formula: 'Q = Q_p*s', value: item.flow, unit: 'flow', source: 'Inlets of one low spot share its flow by the length of their edge; ours',
      symbols: [
        symbol('Q_p', 'peakOntoLowSpot', total, 'flow', `/results/peaks/${peak}/flow`), symbol('s', 'inletShare', total > 0 ? item.flow / total : 0, 'percent'),
      ],
    });
    return [capacity, flow];
  });
}
