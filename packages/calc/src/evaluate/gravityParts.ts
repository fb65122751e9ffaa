import { outletDepth, type OutletPipe } from '../channel/outletDepth.ts';
import { spatiallyVariedFlow, type WaterSurface } from '../channel/spatiallyVariedFlow.ts';
import type { Channel, DesignDocument, Gutter, Pipe } from '../document/document.ts';
import { fullPipe, partFullPipe } from '../pipe/manning.ts';
import type { ChannelResult, GutterResult, PeakFlow, PipeResult } from '../results/results.ts';
import { gutterCapacity, gutterLeaderCapacity } from '../routing/inflow.ts';
import { partsOf } from '../routing/pathParts.ts';
import { flowThrough, inletPeak, nextPart, partDemand, pondPeaks } from './flows.ts';

/** Steps of a channel profile; the depth moves by less than 0.1 % beyond. */
const profileSteps = 60;
const profilePoints = 30;
/** A pipe without fall carries nothing by gravity; its share is given as this. */
export const shareWithoutFall = 99;

/** Peak flows of each low spot, `target` its id; with ":bare" behind it for the site without the system. */
export function peakFlows(document: DesignDocument, periods: readonly number[]): PeakFlow[] {
  return periods.flatMap((returnPeriod) => {
    const withSystem = pondPeaks(document, returnPeriod, 'system');
    const bare = pondPeaks(document, returnPeriod, 'bare');
    return document.site.lowSpots.flatMap((spot, index) => [
      { returnPeriod, target: spot.id, flow: withSystem[index]! },
      { returnPeriod, target: `${spot.id}:bare`, flow: bare[index]! },
    ]);
  });
}

export function gutterResults(document: DesignDocument): GutterResult[] {
  return partsOf(document, 'gutter').map((gutter: Gutter) => {
    const capacity = gutterCapacity(gutter);
    const leaders = gutterLeaderCapacity(document, gutter);
    const demand = partDemand(document, gutter.id, document.rain.designReturnPeriod);
    const leaderCapacity = leaders === Infinity ? capacity : leaders;
    return { part: gutter.id, capacity, leaderCapacity, demand, overflow: Math.max(0, demand - Math.min(capacity, leaderCapacity)) };
  });
}

/** The pipe right behind a channel's outlet, if it is as wide as the outlet. */
export function outletPipeOf(document: DesignDocument, channel: Channel): OutletPipe | null {
  const next = nextPart(document, channel);
  if (next?.kind !== 'pipe' || channel.outletDiameter === null) return null;
  if (Math.abs(next.diameter - channel.outletDiameter) > 0.1 * next.diameter || next.invertUp <= next.invertDown) return null;
  return { length: next.length, slope: (next.invertUp - next.invertDown) / next.length, roughness: next.roughness, tailwater: 0 };
}

function thin(surface: WaterSurface, length: number): ChannelResult['profile'] {
  const stride = Math.max(1, Math.floor(surface.profile.length / profilePoints));
  const kept = surface.profile.filter((_, index) => index % stride === 0 || index === surface.profile.length - 1);
  return kept.map(({ x, depth }) => ({ x: Math.min(x, length), depth }));
}

function channelResult(document: DesignDocument, channel: Channel, returnPeriod: number): ChannelResult {
  const flow = inletPeak(document, channel, returnPeriod);
  const side = flow / channel.outletSides;
  const length = channel.length / channel.outletSides;
  const slope = (channel.invertUp - channel.invertDown) / length;
  const shape = { width: channel.width, length, slope, roughness: channel.roughness };
  const frictionless = spatiallyVariedFlow({ ...shape, slope: 0, roughness: 0 }, side, null, profileSteps);
  const free = spatiallyVariedFlow(shape, side, null, profileSteps);
  const end = channel.outletDiameter === null ? null : outletDepth(flow, channel.width, channel.outletDiameter, outletPipeOf(document, channel), side);
  const real = end === null ? free : spatiallyVariedFlow(shape, side, end.depth, profileSteps);
  const ruled = end !== null && end.control !== 'critical' && end.depth > free.depthAtOutlet;
  return {
    part: channel.id, returnPeriod, flow, depthFreeFrictionless: frictionless.depthUpstream, depthFree: free.depthMax, depth: real.depthMax,
    endCondition: ruled ? 'outlet' : 'critical', share: real.depthMax / channel.depth, profile: thin(real, length),
  };
}

export function channelResults(document: DesignDocument, periods: readonly number[]): ChannelResult[] {
  return partsOf(document, 'channel').flatMap((channel) => periods.map((period) => channelResult(document, channel, period)));
}

export const pipeSlope = (pipe: Pipe): number => (pipe.invertUp - pipe.invertDown) / pipe.length;

export function pipeResults(document: DesignDocument): PipeResult[] {
  return partsOf(document, 'pipe').map((pipe) => {
    const slope = pipeSlope(pipe);
    const designFlow = flowThrough(document, pipe, document.rain.designReturnPeriod);
    if (slope <= 0) {
      return {
        part: pipe.id, slope, fullFlow: 0, fullVelocity: 0, designFlow, share: designFlow > 0 ? shareWithoutFall : 0, depthRatio: 1, velocity: 0,
        tractiveStress: 0,
      };
    }
    const shape = { diameter: pipe.diameter, slope, roughness: pipe.roughness };
    const full = fullPipe(shape);
    const open = partFullPipe(shape, designFlow);
    return {
      part: pipe.id, slope, fullFlow: full.flow, fullVelocity: full.velocity, designFlow, share: designFlow / full.flow, depthRatio: open.depthRatio,
      velocity: open.velocity, tractiveStress: open.tractiveStress,
    };
  });
}
