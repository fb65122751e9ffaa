import type { LibraryContent, LibraryEntry } from '@yardfall/contracts';
import type { Prisma } from '../generated/prisma/client.ts';

export const entryParts = { updatedBy: { select: { name: true } } } satisfies Prisma.LibraryEntryInclude;

export function presentEntry(row: Prisma.LibraryEntryGetPayload<{ include: typeof entryParts }>): LibraryEntry {
  return {
    id: row.id, name: row.name, source: row.source, priceCode: row.priceCode, content: JSON.parse(Buffer.from(row.content).toString('utf8')) as LibraryContent, sha256: row.sha256,
    active: row.active, version: row.version, updatedAt: row.updatedAt.toISOString(), by: row.updatedBy.name,
  };
}
