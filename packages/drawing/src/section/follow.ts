import type { Part } from '@yardfall/calc';

const catchBasinWidth = 0.3;
/** Widths of things whose document entry gives none [m], ours. */
const outletWidth = 0.2;

/** A part with the true stations [m from the sill] between which it lies. */
export interface Placed {
  readonly part: Part;
  readonly from: number;
  readonly to: number;
  /** The part beside the section plane that is drawn for this one too, since both are the same at the same levels. */
  readonly twin?: string;
}

/** Part after part as the water runs, up to the end or to one that was seen. */
export function follow(parts: readonly Part[], head: Part | null, start: number, seen: Set<string>): Placed[] {
  const placed: Placed[] = [];
  let station = start;
  let part = head;
  while (part !== null && !seen.has(part.id)) {
    seen.add(part.id);
    const [from, to, next] = span(part, station);
    placed.push({ part, from, to });
    station = next;
    part = nextOf(parts, part);
  }
  return placed;
}

/** Stations of a part that the water reaches at `station`, and where it leaves. */
function span(part: Part, station: number): [from: number, to: number, next: number] {
  switch (part.kind) {
    case 'channel':
      return [station - part.width / 2, station + part.width / 2, station + part.width / 2];
    case 'catchBasin':
      return [station - catchBasinWidth / 2, station + catchBasinWidth / 2, station + catchBasinWidth / 2];
    case 'pipe':
    case 'roofLine':
    case 'dischargeLine':
    case 'underdrain':
    case 'swale':
      return [station, station + part.length, station + part.length];
    case 'basin':
      return [station, station + part.diameter, station + part.diameter / 2];
    case 'outlet':
      return [station, station + outletWidth, station + outletWidth];
    default:
      return [station, station, station];
  }
}

/** What the water meets after this part; a basin hands over to its duty pump. */
function nextOf(parts: readonly Part[], part: Part): Part | null {
  if (part.kind === 'basin') {
    const pumps = parts.filter((other) => other.kind === 'pump' && other.basin === part.id);
    const duty = pumps.find((pump) => pump.kind === 'pump' && pump.role === 'duty') ?? pumps[0];
    if (duty !== undefined) return duty;
  }
  return parts.find((other) => other.id === part.drainsTo) ?? null;
}
