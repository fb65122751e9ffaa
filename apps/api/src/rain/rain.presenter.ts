import type { RainTable } from '@yardfall/calc';
import type { RainTableRow } from '@yardfall/contracts';
import type { Prisma } from '../generated/prisma/client.ts';

export const rainParts = { createdBy: { select: { name: true } } } satisfies Prisma.RainTableInclude;

export function tableOf(content: Uint8Array): RainTable {
  return JSON.parse(Buffer.from(content).toString('utf8')) as RainTable;
}

export function presentTable(row: Prisma.RainTableGetPayload<{ include: typeof rainParts; omit: { original: true } }>): RainTableRow {
  return {
    id: row.id, jobId: row.jobId, name: row.name, table: tableOf(row.content) as RainTableRow['table'], sha256: row.sha256, originalName: row.originalName,
    createdAt: row.createdAt.toISOString(), by: row.createdBy.name,
  };
}
