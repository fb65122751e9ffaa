import type { DesignDocument, Part } from '@yardfall/calc';

/** Level fields that a hand on the drawing may change, by kind of part. */
const levelFields = {
  channel: ['grateLevel', 'invertUp', 'invertDown'],
  catchBasin: ['grateLevel', 'invertOut'],
  pipe: ['invertUp', 'invertDown'],
  underdrain: ['invertUp', 'invertDown'],
  roofLine: ['unsealedJointLevel'],
  basin: ['floorLevel', 'rimLevel', 'inletInvert', 'offLevel', 'onLevel', 'alarmLevel'],
  dischargeLine: ['highPoint'],
  outlet: ['level', 'waterLevel', 'groundLevel'],
} as const satisfies Partial<Record<Part['kind'], readonly string[]>>;

type Levels = Readonly<Record<string, number>>;

export function editableFields(part: Part): readonly string[] {
  const table: Partial<Record<Part['kind'], readonly string[]>> = levelFields;
  return table[part.kind] ?? [];
}

/**
 * The document with one level set. What is joined to it keeps its step: the invert on the other side of the joint,
 * a level channel's other end, the water over a lid. Nothing further along moves, so the falls show what changed.
 */
export function setLevel(document: DesignDocument, id: string, field: string, value: number): DesignDocument {
  if (!Number.isFinite(value)) throw new RangeError(`a level must be a number, not ${value}`);
  const sill = document.site.sills.find((entry) => entry.id === id);
  if (sill !== undefined) return setSill(document, id, field, value);
  const part = document.system.parts.find((entry) => entry.id === id);
  if (part === undefined) throw new RangeError(`the document has no part ${id}`);
  if (!editableFields(part).includes(field)) throw new RangeError(`a ${part.kind} has no level ${field} to set`);
  const before = levelOf(part, field);
  const delta = before === null ? 0 : value - before;
  const changes = new Map<string, Levels>([[id, { [field]: value, ...followersWithin(part, field, delta) }]]);
  for (const [other, levels] of followersAcross(document.system.parts, part, field, delta)) changes.set(other, levels);
  const parts = document.system.parts.map((entry): Part => {
    const levels = changes.get(entry.id);
    return levels === undefined ? entry : { ...entry, ...levels };
  });
  return { ...document, system: { ...document.system, parts } };
}

/** Sets the lower invert of a pipe so that it falls by `slope` over its length. */
export function setFall(document: DesignDocument, pipe: string, slope: number): DesignDocument {
  const part = document.system.parts.find((entry) => entry.id === pipe);
  if (part === undefined || (part.kind !== 'pipe' && part.kind !== 'underdrain')) throw new RangeError(`${pipe} is not a pipe`);
  return setLevel(document, pipe, 'invertDown', part.invertUp - slope * part.length);
}

function setSill(document: DesignDocument, id: string, field: string, value: number): DesignDocument {
  if (field !== 'level') throw new RangeError(`a sill has no level ${field} to set`);
  const sills = document.site.sills.map((sill) => (sill.id === id ? { ...sill, level: value } : sill));
  return { ...document, site: { ...document.site, sills } };
}

function levelOf(part: Part, field: string): number | null {
  const value: unknown = Object.entries(part).find(([name]) => name === field)?.[1];
  return typeof value === 'number' ? value : null;
}

function followersWithin(part: Part, field: string, delta: number): Levels {
  if (part.kind === 'channel' && part.invertUp === part.invertDown && (field === 'invertUp' || field === 'invertDown')) {
    return { invertUp: part.invertUp + delta, invertDown: part.invertDown + delta };
  }
  if (part.kind === 'outlet' && field === 'level') return { waterLevel: part.waterLevel + delta };
  return {};
}

/** Fields at the upstream and the downstream joint of a part. */
function jointFields(part: Part): { up: string | null; down: string | null } {
  switch (part.kind) {
    case 'channel':
      return { up: null, down: 'invertDown' };
    case 'catchBasin':
      return { up: null, down: 'invertOut' };
    case 'pipe':
    case 'underdrain':
      return { up: 'invertUp', down: 'invertDown' };
    case 'basin':
      return { up: 'inletInvert', down: null };
    default:
      return { up: null, down: null };
  }
}

function followersAcross(parts: readonly Part[], moved: Part, field: string, delta: number): [string, Levels][] {
  const joints = jointFields(moved);
  const atDown = field === joints.down || (moved.kind === 'channel' && moved.invertUp === moved.invertDown && field === 'invertUp');
  const result: [string, Levels][] = [];
  if (atDown) {
    const next = parts.find((part) => part.id === moved.drainsTo);
    if (next !== undefined) result.push(...shifted(next, jointFields(next).up, delta));
  } else if (field === joints.up) {
    for (const feeder of parts.filter((part) => part.drainsTo === moved.id)) result.push(...shifted(feeder, jointFields(feeder).down, delta));
  }
  return result;
}

function shifted(part: Part, field: string | null, delta: number): [string, Levels][] {
  const level = field === null ? null : levelOf(part, field);
  if (field === null || level === null) return [];
  return [[part.id, { [field]: level + delta, ...followersWithin(part, field, delta) }]];
}
