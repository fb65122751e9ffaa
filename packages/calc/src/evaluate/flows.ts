import type { Channel, CatchBasin, DesignDocument, Part } from '../document/document.ts';
import { depthAt, intensityOf } from '../rain/depthAt.ts';
import { rationalFlow } from '../runoff/rational.ts';
import { underdrainFlow } from '../routing/groundWater.ts';
import { routesOf, type InflowCase, type Route } from '../routing/inflow.ts';
import { endOf, partById, partsOf, pathFrom } from '../routing/pathParts.ts';
import { inletsOf } from '../routing/buildModel.ts';

/** Averaging time of the rain for peak flows: 5 minutes. Source: least time of concentration, common practice. */
export const peakDuration = 300;

/** Mean intensity of the wettest five minutes [m/s], climate allowance counted. */
export function peakIntensity(document: DesignDocument, returnPeriod: number): number {
  const { table, allowance } = document.rain;
  const duration = Math.max(peakDuration, table.durations[0]!);
  return intensityOf(depthAt(table, duration, returnPeriod) * (1 + allowance), duration);
}

interface PeakShares {
  readonly ponds: number[];
  /** Direct flow into each part that a catchment names, less what its gutter spills. */
  readonly parts: Map<string, number>;
}

function routed(document: DesignDocument, routes: readonly Route[], returnPeriod: number): PeakShares {
  const intensity = peakIntensity(document, returnPeriod);
  const ponds = document.site.lowSpots.map(() => 0);
  const parts = new Map<string, number>();
  const left = new Map<string, number>();
  document.site.catchments.forEach((catchment, index) => {
    const route = routes[index]!;
    const flow = rationalFlow(catchment.coefficient, intensity, catchment.area);
    const room = route.gutter === null ? route.capacity : (left.get(route.gutter) ?? route.capacity);
    const carried = Math.min(flow, room);
    if (route.gutter !== null) left.set(route.gutter, room - carried);
    if (route.pond >= 0) ponds[route.pond] = ponds[route.pond]! + carried;
    else if (catchment.drainsTo.kind === 'part') parts.set(catchment.drainsTo.id, (parts.get(catchment.drainsTo.id) ?? 0) + carried);
    if (route.excessPond >= 0) ponds[route.excessPond] = ponds[route.excessPond]! + flow - carried;
  });
  return { ponds, parts };
}

/** Rational peak flow onto each low spot [m3/s], in the order of the document. */
export function pondPeaks(document: DesignDocument, returnPeriod: number, inflowCase: InflowCase): number[] {
  return routed(document, routesOf(document, inflowCase), returnPeriod).ponds;
}

/** Rational peak of all that falls on the catchments of a part, before its capacity is asked [m3/s]. */
export function partDemand(document: DesignDocument, partId: string, returnPeriod: number): number {
  const intensity = peakIntensity(document, returnPeriod);
  return document.site.catchments
    .filter(({ drainsTo }) => drainsTo.kind === 'part' && drainsTo.id === partId)
    .reduce((sum, catchment) => sum + rationalFlow(catchment.coefficient, intensity, catchment.area), 0);
}

/** Measure by which inlets of one low spot share its flow: length of channel or edge of grate [m]. */
const inletSize = (part: Channel | CatchBasin): number => (part.kind === 'channel' ? part.length : part.gratePerimeter);

/** Peak flow of one inlet: its share of the flow onto its low spot [m3/s]. */
export function inletPeak(document: DesignDocument, inlet: Channel | CatchBasin, returnPeriod: number): number {
  const pond = document.site.lowSpots.findIndex((spot) => spot.id === inlet.lowSpot);
  const beside = inletsOf(document).map(({ part }) => part).filter((part) => part.lowSpot === inlet.lowSpot);
  const total = beside.reduce((sum, part) => sum + inletSize(part), 0);
  return (pondPeaks(document, returnPeriod, 'system')[pond]! * inletSize(inlet)) / total;
}

/** Peak flow through a part: every inlet, catchment and underdrain upstream of it [m3/s]. */
export function flowThrough(document: DesignDocument, part: Part, returnPeriod: number): number {
  const passes = (id: string): boolean => id !== part.id && pathFrom(document, id).some((item) => item.id === part.id);
  let flow = 0;
  for (const { part: inlet } of inletsOf(document)) if (passes(inlet.id)) flow += inletPeak(document, inlet, returnPeriod);
  const { parts } = routed(document, routesOf(document, 'system'), returnPeriod);
  for (const [id, direct] of parts) if (id === part.id || passes(id)) flow += direct;
  for (const drain of partsOf(document, 'underdrain')) if (passes(drain.id)) flow += underdrainFlow(drain);
  return flow;
}

/** Steady ground water that ends in a basin [m3/s]. */
export function groundWaterInto(document: DesignDocument, basinId: string): number {
  return partsOf(document, 'underdrain')
    .filter((drain) => endOf(document, drain.id)?.id === basinId)
    .reduce((sum, drain) => sum + underdrainFlow(drain), 0);
}

export const nextPart = (document: DesignDocument, part: Part): Part | undefined => partById(document, part.drainsTo);
