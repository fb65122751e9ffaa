import { FOOT, GRAVITY } from '../common/constants.ts';
import type { DesignDocument, Outlet, Part, PartKind, Pipe } from '../document/document.ts';
import { PI } from '../math/constants.ts';
import type { WhatIfCase } from '../results/decisions.ts';
import type { InflowCase } from '../routing/inflow.ts';
import { bendLoss } from '../routing/linkOf.ts';
import { partsOf, pathFrom } from '../routing/pathParts.ts';
import { dutyAt, pumpLineOf } from '../routing/pumpLine.ts';

/** What goes wrong, as the document that it makes of the design and the water that then comes. */
export interface WhatIfSetup {
  readonly case: WhatIfCase;
  readonly at: string | null;
  readonly document: DesignDocument;
  readonly inflowCase: InflowCase;
  /** The real run counts beside the twin: the twin has no starts, so nothing runs back in it. */
  readonly real: boolean;
}

/** Half of what is open is blocked. Source: the trade's what-if list. */
const halfOpen = 0.5;
/** Orifice coefficient of a half-blocked exit. Source: common practice, no source. */
const exitCoefficient = 0.6;
/** Depth of water over a lid, or over the ground at an outlet, on a flooded lawn: 0.1 ft. Source: ours. */
const floodedLawn = 0.1 * FOOT;

const circleArea = (diameter: number): number => 0.25 * PI * diameter * diameter;

function withParts(document: DesignDocument, change: (part: Part) => Part | null): DesignDocument {
  return { ...document, system: { ...document.system, parts: document.system.parts.flatMap((part) => change(part) ?? []) } };
}

const has = (document: DesignDocument, kind: PartKind): boolean => document.system.parts.some((part) => part.kind === kind);

/** A pump that does not start: it is taken out, and whatever stands by remains. */
function pumpFailed(document: DesignDocument, id: string): DesignDocument {
  return withParts(document, (part) => (part.id === id || (part.kind === 'weepHole' && part.pump === id) ? null : part));
}

/** Half of the opening that every run counts on is blocked as well. */
function gratesHalfBlocked(document: DesignDocument): DesignDocument {
  return withParts(document, (part) => {
    if (part.kind === 'channel') return { ...part, grate: { ...part.grate, clogging: halfOpen * part.grate.clogging } };
    return part.kind === 'catchBasin' ? { ...part, clogging: halfOpen * part.clogging } : part;
  });
}

/** Head of an orifice [m]: h = (Q / (C A))^2 / 2g. Source: orifice equation. */
function exitHead(flow: number, area: number): number {
  const velocity = flow / (exitCoefficient * area);
  return (velocity * velocity) / (2 * GRAVITY);
}

/**
 * The exit of an outlet is half blocked. A pump line works against the head that its free duty needs through what is open,
 * which is a little too much, since the flow falls; a gravity pipe gets the same loss as velocity heads of its last length.
 */
export function exitHalfBlocked(document: DesignDocument, outlet: Outlet): DesignDocument {
  const pumps = partsOf(document, 'pump').filter((pump) => pump.role === 'duty' && pathFrom(document, pump.id).some(({ id }) => id === outlet.id));
  if (pumps.length > 0) {
    const lines = pumps.map((pump) => pumpLineOf(document, pump));
    const flow = lines.reduce((sum, line) => sum + dutyAt(line, line.basin.onLevel).flow, 0);
    const head = exitHead(flow, halfOpen * circleArea(outlet.exitDiameter ?? lines[0]!.line.innerDiameter));
    return withParts(document, (part) => (part.id === outlet.id && part.kind === 'outlet' ? { ...part, openingHead: part.openingHead + head } : part));
  }
  return withParts(document, (part) => {
    if (part.kind !== 'pipe' || part.drainsTo !== outlet.id) return part;
    const ratio = circleArea(part.diameter) / (exitCoefficient * halfOpen * circleArea(outlet.exitDiameter ?? part.diameter));
    return { ...part, bends45: part.bends45 + Math.max(0, ratio * ratio - 1) / bendLoss.bend45 } satisfies Pipe;
  });
}

/**
 * Level of water over an outlet when nothing soaks away any more: the lawn stands flooded over the lid and over the ground beside it,
 * a dry well to its top. An outlet that lies no lower than the bottom of a low spot is on the same flat ground and stands under
 * water up to the rim of that low spot.
 */
export function saturatedLevel(document: DesignDocument, outlet: Outlet): number {
  let level = Math.max(outlet.waterLevel, outlet.level + floodedLawn, outlet.groundLevel + floodedLawn);
  if (outlet.dryWell !== null) level = Math.max(level, outlet.dryWell.bottomLevel + outlet.dryWell.depth);
  for (const spot of document.site.lowSpots) if (outlet.level >= spot.stageArea[0]!.level) level = Math.max(level, spot.rimLevel);
  return level;
}

function outletsSaturated(document: DesignDocument): DesignDocument {
  return withParts(document, (part) => (part.kind === 'outlet' ? { ...part, waterLevel: saturatedLevel(document, part), dryWell: null } : part));
}

const withoutValve = (document: DesignDocument, id: string): DesignDocument =>
  withParts(document, (part) => (part.kind === 'checkValve' && part.id === id ? { ...part, present: false } : part));

/** Outlets with a lid or a tee that a pump line or an inlet leads to. */
function blockableOutlets(document: DesignDocument): Outlet[] {
  const sources = document.system.parts.filter(({ kind }) => kind === 'pump' || kind === 'channel' || kind === 'catchBasin');
  const reached = new Set(sources.flatMap(({ id }) => pathFrom(document, id).map((part) => part.id)));
  return partsOf(document, 'outlet').filter(({ id, outletKind }) => (outletKind === 'emitter' || outletKind === 'percolationTee') && reached.has(id));
}

/** Every what-if that a design gives cause for, but the power out, which is searched for its worst start. */
export function whatIfSetups(document: DesignDocument): WhatIfSetup[] {
  const setup = (name: WhatIfCase, at: string | null, changed: DesignDocument, inflowCase: InflowCase = 'system', real = false): WhatIfSetup =>
    ({ case: name, at, document: changed, inflowCase, real });
  return [
    setup('noSystem', null, document, 'bare'),
    ...partsOf(document, 'pump').filter(({ role }) => role === 'duty').map(({ id }) => setup('pumpFailed', id, pumpFailed(document, id))),
    ...(has(document, 'channel') || has(document, 'catchBasin') ? [setup('grateHalfBlocked', null, gratesHalfBlocked(document))] : []),
    ...blockableOutlets(document).map((outlet) => setup('emitterHalfBlocked', outlet.id, exitHalfBlocked(document, outlet))),
    ...(has(document, 'gutter') ? [setup('gutterOverflowing', null, document, 'gutterOverflowing')] : []),
    ...(has(document, 'outlet') ? [setup('outletSaturated', null, outletsSaturated(document))] : []),
    ...partsOf(document, 'checkValve').filter(({ present }) => present).map(({ id }) => setup('checkValveMissing', id, withoutValve(document, id), 'system', true)),
  ];
}
