import type { DesignDocument, Part, PartKind } from '../document/document.ts';

type OfKind<K extends PartKind> = Extract<Part, { readonly kind: K }>;

/** Parts of one kind, in the order of the document. */
export function partsOf<K extends PartKind>(document: DesignDocument, kind: K): OfKind<K>[] {
  return document.system.parts.filter((part): part is OfKind<K> => part.kind === kind);
}

export function partById(document: DesignDocument, id: string | null): Part | undefined {
  return id === null ? undefined : document.system.parts.find((part) => part.id === id);
}

/** The part itself and everything downstream of it, in order. */
export function pathFrom(document: DesignDocument, id: string): Part[] {
  const byId = new Map(document.system.parts.map((part) => [part.id, part]));
  const path: Part[] = [];
  let part = byId.get(id);
  while (part !== undefined && path.length <= byId.size) {
    path.push(part);
    part = part.drainsTo === null ? undefined : byId.get(part.drainsTo);
  }
  return path;
}

/** Where water that is in this part ends: a basin, an outlet, or null when the part only belongs to another. */
export function endOf(document: DesignDocument, id: string): OfKind<'basin'> | OfKind<'outlet'> | null {
  const last = pathFrom(document, id).find((part) => part.kind === 'basin' || part.kind === 'outlet');
  return last !== undefined && (last.kind === 'basin' || last.kind === 'outlet') ? last : null;
}
