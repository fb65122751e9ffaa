import type { DesignDocument, Part, PartKind } from '@yardfall/calc';
import { pumpedSystem } from './layout.ts';

/** Kinds that can be added by hand, in the order that water meets them. */
export const addable: readonly PartKind[] = ['gutter', 'leader', 'roofLine', 'channel', 'catchBasin', 'pipe', 'cleanout', 'underdrain', 'swale', 'basin', 'pump', 'checkValve', 'weepHole', 'dischargeLine', 'outlet'];

const prefixes: Record<PartKind, string> = {
  gutter: 'G', leader: 'D', roofLine: 'R', channel: 'CH', catchBasin: 'CB', pipe: 'P', cleanout: 'CO', underdrain: 'U', swale: 'SW', basin: 'B', pump: 'M', checkValve: 'V',
  weepHole: 'W', dischargeLine: 'N', outlet: 'O',
};

/** The first id of a letter and a number that nothing in a list has. */
export function freeId(taken: readonly { readonly id: string }[], prefix: string): string {
  const known = new Set(taken.map(({ id }) => id));
  let n = 1;
  while (known.has(prefix + String(n))) n += 1;
  return prefix + String(n);
}

const freePartId = ({ system }: DesignDocument, kind: PartKind): string => freeId(system.parts, prefixes[kind]);

/** A part of a kind with plain starting figures, named and placed, not yet connected. */
export function newPart(document: DesignDocument, kind: PartKind, name: string): Part | null {
  const id = freePartId(document, kind);
  const made = pumpedSystem(document).find((part) => part.kind === kind) ?? plainPart(document, kind);
  return made ? { ...made, id, name, drainsTo: null } : null;
}

function plainPart(document: DesignDocument, kind: PartKind): Part | null {
  const lowSpot = document.site.lowSpots[0];
  const ground = document.site.soil.gradeLevel;
  const base = { id: 'X', name: '', drainsTo: null };
  switch (kind) {
    case 'gutter': return lowSpot ? { ...base, kind, width: 0.1524, depth: 0.1016, length: 8.5344, slope: 0.005, overflowsTo: lowSpot.id } : null;
    case 'leader': return { ...base, kind, diameter: 0.0762, count: 1 };
    case 'roofLine': return { ...base, kind, diameter: 0.1016, length: 12.192, roughness: 0.01, bends90: 1, bends45: 2, unsealedJointLevel: ground + 0.3048 };
    case 'catchBasin': return lowSpot ? { ...base, kind, lowSpot: lowSpot.id, grateLevel: ground - 0.1, gratePerimeter: 1.2192, grateOpenArea: 0.03, clogging: 0.5, invertOut: ground - 0.4, sumpDepth: 0.1524 } : null;
    case 'cleanout': return { ...base, kind, diameter: 0.1016 };
    case 'underdrain': return { ...base, kind, diameter: 0.1016, length: 6.096, invertUp: ground - 0.5, invertDown: ground - 0.56, inflowPerLength: 0, seepage: null };
    case 'swale': return { ...base, kind, length: 9.144, slope: 0.02, sideSlope: 4, depth: 0.1524, roughness: 0.06 };
    default: return null;
  }
}

/** Parts that a part of this kind may drain to. */
export function targetsOf(document: DesignDocument, part: Part): readonly Part[] {
  return document.system.parts.filter((other) => other.id !== part.id && !['gutter', 'weepHole', 'pump'].includes(other.kind));
}
