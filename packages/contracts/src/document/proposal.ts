import type { DesignDocument, Part, Utility } from '@yardfall/calc';
import type { DraftOperation } from '../designs.ts';
import type { FoundReport } from '../found.ts';

/** What the crew found, as far as a design can take it over. */
export type FoundMeasure = Pick<FoundReport, 'id' | 'kind' | 'part' | 'measure'>;

/** A hand-dig strip each side of a line that nobody marked [m], ours: two feet. */
const unmarkedTolerance = 0.6096;
/** A measure that is farther from every invert of a part is no invert of it [m], ours. */
const nearInvert = 1;

/**
 * The edit that a finding asks for, to be shown and accepted by the estimator; null where it says nothing that a document holds,
 * or where the document holds it already. Levels and depths in meters.
 */
export function proposedEdit(document: DesignDocument, found: FoundMeasure, name: string): DraftOperation | null {
  switch (found.kind) {
    case 'thickerSlab':
      return slabEdit(document, found, 'thickness', found.measure);
    case 'steel':
      return slabEdit(document, found, 'reinforcement', 'bar');
    case 'pipeInTheWay':
    case 'utility':
      return crossing(document, found, name);
    case 'other':
      return otherInvert(document, found);
    default:
      return null;
  }
}

/** The cut at the part, or the only cut there is. */
function slabEdit(document: DesignDocument, { part }: FoundMeasure, field: 'thickness' | 'reinforcement', value: number | string | null): DraftOperation | null {
  const { slabCuts } = document.construction;
  const cut = slabCuts.find((one) => one.part === part || one.id === part) ?? (part === null && slabCuts.length === 1 ? slabCuts[0] : undefined);
  if (cut === undefined || value === null || cut[field] === value || (typeof value === 'number' && !(value > 0))) return null;
  return { kind: 'replace', path: ['construction', 'slabCuts', `@${cut.id}`, field], value };
}

/** A line across the trench, at its depth below the surface at the part. */
function crossing({ site, system }: DesignDocument, { id, part, measure }: FoundMeasure, name: string): DraftOperation | null {
  const at = system.parts.find((one) => one.id === part);
  const entry = `F${id.slice(-6)}`;
  if (at === undefined || measure === null || site.utilities.some((utility) => utility.id === entry)) return null;
  const spot = at.kind === 'channel' || at.kind === 'catchBasin' ? site.lowSpots.find((one) => one.id === at.lowSpot) : undefined;
  const found: Utility = { id: entry, kind: 'private', name, station: spot?.station ?? null, level: surfaceAt(at, site.soil.gradeLevel) - measure, tolerance: unmarkedTolerance };
  return { kind: 'add', path: ['site', 'utilities', '-'], value: { ...found } };
}

function surfaceAt(part: Part, grade: number): number {
  if (part.kind === 'channel' || part.kind === 'catchBasin') return part.grateLevel;
  if (part.kind === 'basin') return part.rimLevel;
  return part.kind === 'outlet' ? part.groundLevel : grade;
}

/** The invert of the part that the measured level is nearest to. */
function otherInvert({ system }: DesignDocument, { part, measure }: FoundMeasure): DraftOperation | null {
  const at = system.parts.find((one) => one.id === part);
  if (at === undefined || measure === null) return null;
  const fields = at as unknown as Readonly<Record<string, unknown>>;
  const inverts = ['invertUp', 'invertDown', 'invertOut', 'inletInvert'].flatMap((field) => (typeof fields[field] === 'number' ? [{ field, away: Math.abs(fields[field] - measure) }] : []));
  const nearest = inverts.sort((a, b) => a.away - b.away)[0];
  if (nearest === undefined || nearest.away > nearInvert || nearest.away === 0) return null;
  return { kind: 'replace', path: ['system', 'parts', `@${at.id}`, nearest.field], value: measure };
}
