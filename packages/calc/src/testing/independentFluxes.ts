import type { Basin, CatchBasin, Channel, DesignDocument, LowSpot, Outlet, Part, PartKind, Pipe, Pump } from '../document/document.ts';

/**
 * Fluxes and areas of a yard written from the document by their formulas alone, for the check of the router: no table of
 * the router, no function of it, and JavaScript's own Math. Straight pump curves only, one pipe to each inlet.
 */
const g = 9.80665;
const foot = 0.3048;
/** 3.0 in US units. */
const weirC = 3 * Math.sqrt(foot);
/** A square root needs some slope at rest for any solver; the router's own chord is twenty times as high. */
const rest = 1e-4;

export const partsOfKind = <K extends PartKind>(document: DesignDocument, kind: K): Extract<Part, { readonly kind: K }>[] =>
  document.system.parts.filter((part): part is Extract<Part, { readonly kind: K }> => part.kind === kind);

export function signedRoot(head: number): number {
  if (Math.abs(head) < rest) return head / Math.sqrt(rest);
  return head > 0 ? Math.sqrt(head) : -Math.sqrt(-head);
}

/** Area of a low spot: square roots of the areas run straight between levels (frustum). */
export function pondArea({ stageArea }: LowSpot, level: number): number {
  const last = stageArea[stageArea.length - 1]!;
  if (level >= last.level) return last.area;
  let i = stageArea.findIndex((stage) => stage.level > level);
  if (i < 1) i = 1;
  const a = stageArea[i - 1]!;
  const b = stageArea[i]!;
  const root = Math.sqrt(a.area) + ((Math.sqrt(b.area) - Math.sqrt(a.area)) * Math.max(0, level - a.level)) / (b.level - a.level);
  return root * root;
}

const slices = 60;

/** Water surface in a sloped pipe or channel under a level plane. */
export function conduitArea(part: Pipe | Channel, level: number): number {
  let width = 0;
  for (let i = 0; i < slices; i += 1) {
    const depth = level - (part.invertDown + ((part.invertUp - part.invertDown) * (i + 0.5)) / slices);
    if (part.kind === 'channel') width += depth > 0 && depth < part.depth ? part.width : 0;
    else if (depth > 0 && depth < part.diameter) width += 2 * Math.sqrt(depth * (part.diameter - depth));
  }
  return (part.length * width) / slices;
}

export function basinArea(document: DesignDocument, basin: Basin, level: number): number {
  let area = (Math.PI / 4) * basin.diameter ** 2;
  for (const part of document.system.parts) {
    if ((part.kind === 'pipe' || part.kind === 'channel') && leadsTo(document, part, basin.id)) area += conduitArea(part, level);
  }
  return area;
}

export function leadsTo(document: DesignDocument, part: Part, id: string): boolean {
  for (let at: Part | undefined = part; at !== undefined; at = document.system.parts.find((item) => item.id === at!.drainsTo)) if (at.id === id) return true;
  return false;
}

/** Free or drowned broad weir. */
export function weir(width: number, crest: number, from: number, to: number): number {
  const up = from - crest;
  const down = to - crest;
  if (up <= 0 && down <= 0) return 0;
  if (down > up) return -weir(width, crest, to, from);
  return down <= (2 / 3) * up ? weirC * width * up ** 1.5 : (Math.sqrt(27) / 2) * weirC * width * down * signedRoot(up - down);
}

/** Through grate, mouth and pipe, the least of them; back when the far end stands higher than pond and grate. */
export function inlet(part: Channel | CatchBasin, pipe: Pipe, pond: number, tail: number): number {
  const area = (Math.PI / 4) * pipe.diameter ** 2;
  const friction = (pipe.roughness ** 2 * pipe.length) / (pipe.diameter / 4) ** (4 / 3);
  const bends = pipe.bends90 * (pipe.longSweep ? 0.3 : 0.9) + pipe.bends45 * 0.2;
  const perFlow = (friction + (0.5 + 1 + bends) / (2 * g)) / area ** 2;
  const crown = pipe.invertDown + pipe.diameter;
  const far = Math.max(crown, tail);
  const near = Math.max(pond, part.grateLevel);
  if (far >= near) return tail > crown ? signedRoot(Math.max(near, crown) - far) / Math.sqrt(perFlow) : 0;
  const head = pond - part.grateLevel;
  if (head <= 0) return 0;
  const clogging = part.kind === 'channel' ? part.grate.clogging : part.clogging;
  const edge = part.kind === 'channel' ? 2 * (part.length + part.width) : part.gratePerimeter;
  const opening = part.kind === 'channel' ? part.length * part.width * part.grate.openAreaRatio : part.grateOpenArea;
  const mouth = part.kind === 'channel' ? part.outletDiameter! : pipe.diameter;
  const invert = part.kind === 'channel' ? part.invertDown : part.invertOut;
  const mouthHead = Math.max(0, pond - invert - mouth / 2);
  return Math.min(
    clogging * weirC * edge * head ** 1.5, clogging * 0.67 * opening * Math.sqrt(2 * g * head),
    0.62 * (Math.PI / 4) * mouth ** 2 * Math.sqrt(2 * g * mouthHead), signedRoot(pond - far) / Math.sqrt(perFlow),
  );
}

export interface LineOf {
  readonly pumps: readonly Pump[];
  readonly length: number;
  readonly diameter: number;
  readonly c: number;
  readonly lift: number;
  readonly opening: number;
  /** Flow of the weep hole under a head of one metre, and the pump that it belongs to. */
  readonly weep: number;
  readonly weepOf: string | null;
}

export function lineOf(document: DesignDocument, pumps: readonly Pump[], outlet: Outlet): LineOf {
  const line = partsOfKind(document, 'dischargeLine')[0]!;
  const valve = partsOfKind(document, 'checkValve').find(({ present }) => present);
  const fittings = line.fittings.reduce((sum, { count, equivalentLength }) => sum + count * equivalentLength, valve?.equivalentLength ?? 0);
  const weep = partsOfKind(document, 'weepHole')[0];
  return {
    pumps, length: line.length + fittings, diameter: line.innerDiameter, c: line.hazenWilliamsC, opening: outlet.openingHead,
    lift: Math.max(outlet.waterLevel, outlet.level, line.highPoint ?? -Infinity), weep: weep === undefined ? 0 : 0.6 * (Math.PI / 4) * weep.diameter ** 2 * Math.sqrt(2 * g), weepOf: weep?.pump ?? null,
  };
}

/**
 * Net flow of `running` pumps of straight curves into a line filled to a share, by bisection on their common head:
 * each gives (1 - H/H0) of its greatest flow, and the line asks for share * (lift + opening + friction).
 */
export function pumped(line: LineOf, running: readonly Pump[], basin: number, tail: number, share: number): number {
  const ends = running.map(({ curve }) => ({ head: Math.max(...curve.map((p) => p.head)), flow: Math.max(...curve.map((p) => p.flow)) }));
  if (ends.length === 0) return 0;
  const total = (head: number): number => ends.reduce((sum, end) => sum + end.flow * Math.min(1, Math.max(0, 1 - head / end.head)), 0);
  const asked = (flow: number): number =>
    share * (Math.max(line.lift, tail) - basin + line.opening + (line.length * 10.67 * (flow / line.c) ** 1.852) / line.diameter ** 4.8704);
  let low = 0;
  let high = Math.max(...ends.map(({ head }) => head));
  if (asked(total(0)) <= 0) return total(0);
  for (let i = 0; i < 60; i += 1) {
    const head = (low + high) / 2;
    if (asked(total(head)) > head) low = head;
    else high = head;
  }
  const flow = total(low);
  const weeps = running.some(({ id }) => id === line.weepOf) && flow > 0;
  return Math.max(0, flow - (weeps ? line.weep * Math.sqrt(Math.max(0, low)) : 0));
}
