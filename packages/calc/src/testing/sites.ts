import { readdirSync, readFileSync } from 'node:fs';
import type { DesignDocument, Part, PartKind } from '../document/document.ts';

export type SiteName = 'tern-hollow' | 'ridgeback' | 'sallow-bend';

/** A demo site's document, read anew for each caller. All three are invented. */
export function demoSite(name: SiteName): DesignDocument {
  return JSON.parse(readFileSync(new URL(`../../../../prisma/seed/sites/${name}.json`, import.meta.url), 'utf8')) as DesignDocument;
}

const seedFolder = new URL('../../../../prisma/seed/sites/', import.meta.url);

/** Names of all demo sites: the three that the demo company works on, and those that only show what the engine can do. */
export const everySite: readonly string[] = readdirSync(seedFolder).filter((file) => file.endsWith('.json')).map((file) => file.replace('.json', '')).sort();

export function siteDocument(name: string): DesignDocument {
  return JSON.parse(readFileSync(new URL(`${name}.json`, seedFolder), 'utf8')) as DesignDocument;
}

export type Changeable<T> = { -readonly [K in keyof T]: Changeable<T[K]> };

/** A changed copy of a document. */
export function changed(document: DesignDocument, change: (copy: Changeable<DesignDocument>) => void): DesignDocument {
  const copy = structuredClone(document) as Changeable<DesignDocument>;
  change(copy);
  return copy as DesignDocument;
}

/** A document with fields of one part replaced. */
export function withPart<K extends PartKind>(document: DesignDocument, id: string, fields: Partial<Extract<Part, { readonly kind: K }>>): DesignDocument {
  return changed(document, (copy) => {
    const part = copy.system.parts.find((item) => item.id === id);
    if (part === undefined) throw new Error(`no part ${id}`);
    Object.assign(part, fields);
  });
}
