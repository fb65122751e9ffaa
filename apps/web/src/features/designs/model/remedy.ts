import type { DesignDocument, Remedy } from '@yardfall/calc';
import type { DraftOperation } from '@yardfall/contracts';

/** A remedy's patch as operations of the draft. Its paths are dotted or slashed keys; an index into a list becomes the id that stands there. */
export function remedyOperations(document: DesignDocument, remedy: Remedy): DraftOperation[] {
  return remedy.patch.map(({ path, value }) => ({ kind: 'replace', path: byId(document, path.split(/[./]/).filter(Boolean)), value }));
}

function byId(document: DesignDocument, keys: readonly string[]): string[] {
  let here: unknown = document;
  return keys.map((key) => {
    const list: unknown = here;
    here = Array.isArray(list) ? elementOf(list, key) : (list as Record<string, unknown> | undefined)?.[key];
    return Array.isArray(list) && typeof here === 'object' && here !== null && 'id' in here ? `@${String(here.id)}` : key;
  });
}

function elementOf(list: readonly unknown[], key: string): unknown {
  if (/^\d+$/.test(key)) return list[Number(key)];
  return list.find((item) => typeof item === 'object' && item !== null && 'id' in item && item.id === key.replace(/^@/, ''));
}
