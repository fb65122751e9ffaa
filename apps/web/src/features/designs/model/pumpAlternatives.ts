import { pumpDuties, type DesignDocument, type PumpDuty } from '@yardfall/calc';
import { libraryDifferences, libraryFields, type LibraryEntry } from '@yardfall/contracts';

/** Another pump of the library in the place of one, on the same line and levels. */
export interface PumpAlternative {
  readonly entry: string;
  readonly name: string;
  readonly duty: PumpDuty;
}

/** More curves than these cannot be told apart on one graph. */
export const mostAlternatives = 4;

/** The pumps of the library that come nearest to the drawn one's flow on this line, by the engine's own duty points; strongest last. */
export function pumpAlternatives(document: DesignDocument, part: string, entries: readonly LibraryEntry[]): PumpAlternative[] {
  const pump = document.system.parts.find(({ id }) => id === part);
  if (pump === undefined) return [];
  const drawn = dutyOf(document, part)?.dutyAtOff.flow ?? 0;
  const found = entries.flatMap((entry): PumpAlternative[] => {
    const fields = entry.active && libraryDifferences(entry.content, entry.name, pump).some(({ field }) => field === 'curve') ? libraryFields(entry.content, entry.name, pump) : null;
    if (fields === null) return [];
    const parts = document.system.parts.map((one) => (one.id === part ? ({ ...one, ...fields } as typeof one) : one));
    const duty = dutyOf({ ...document, system: { ...document.system, parts } }, part);
    return duty === null ? [] : [{ entry: entry.id, name: entry.name, duty }];
  });
  const away = ({ duty }: PumpAlternative): number => Math.abs(duty.dutyAtOff.flow - drawn);
  return found.toSorted((a, b) => away(a) - away(b)).slice(0, mostAlternatives).toSorted((a, b) => a.duty.dutyAtOff.flow - b.duty.dutyAtOff.flow);
}

const dutyOf = (document: DesignDocument, part: string): PumpDuty | null => pumpDuties(document).find((duty) => duty.part === part) ?? null;
