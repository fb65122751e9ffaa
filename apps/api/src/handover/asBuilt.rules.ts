import type { DesignDocument, Part } from '@yardfall/calc';
import type { AsBuiltLevel, Handover } from '@yardfall/contracts';
import type { z } from 'zod';

type Shot = z.infer<typeof AsBuiltLevel>;

/** The levels of each kind of part that are shot again when it is built. */
const levelsOf: Partial<Record<Part['kind'], readonly string[]>> = {
  roofLine: ['unsealedJointLevel'],
  channel: ['invertUp', 'invertDown', 'grateLevel'],
  catchBasin: ['grateLevel', 'invertOut'],
  pipe: ['invertUp', 'invertDown'],
  underdrain: ['invertUp', 'invertDown'],
  basin: ['floorLevel', 'rimLevel', 'inletInvert', 'offLevel', 'onLevel', 'alarmLevel'],
  dischargeLine: ['highPoint'],
  outlet: ['level', 'groundLevel'],
};

/** The designed level, or null where the design has none of this name. */
export function designedLevel(document: DesignDocument, part: string, field: string): number | null {
  const designed = document.system.parts.find(({ id }) => id === part);
  if (designed === undefined || !(levelsOf[designed.kind] ?? []).includes(field)) return null;
  const value: unknown = Reflect.get(designed, field);
  return typeof value === 'number' ? value : null;
}

export interface Compared {
  readonly asBuilt: Handover['asBuilt'];
  /** Positions of shots that name no level of the design. */
  readonly unknown: readonly number[];
}

export function compareAsBuilt(document: DesignDocument, shots: readonly Shot[]): Compared {
  const compared = shots.map(({ part, field, level }) => {
    const designed = designedLevel(document, part, field);
    return designed === null ? null : { part, field, level, designed, difference: level - designed };
  });
  return { asBuilt: compared.flatMap((row) => row ?? []), unknown: compared.flatMap((row, index) => (row === null ? [index] : [])) };
}
