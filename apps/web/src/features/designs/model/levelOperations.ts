import type { DesignDocument } from '@yardfall/calc';
import type { DraftOperation } from '@yardfall/contracts';

/** The edits that lead from one document to another in which only figures of parts and sills differ. */
export function levelOperations(before: DesignDocument, after: DesignDocument): DraftOperation[] {
  return [
    ...changed(['system', 'parts'], before.system.parts, after.system.parts),
    ...changed(['site', 'sills'], before.site.sills, after.site.sills),
  ];
}

function changed<T extends { readonly id: string }>(path: readonly string[], before: readonly T[], after: readonly T[]): DraftOperation[] {
  return after.flatMap((item) => {
    const was = before.find(({ id }) => id === item.id);
    if (was === undefined || was === item) return [];
    const fields = new Map<string, unknown>(Object.entries(was));
    return Object.entries(item).flatMap(([field, value]): DraftOperation[] => (fields.get(field) === value ? [] : [{ kind: 'replace', path: [...path, `@${item.id}`, field], value: value as never }]));
  });
}
