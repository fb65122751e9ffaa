import type { Handover } from '@yardfall/contracts';
import type { Prisma } from '../generated/prisma/client.ts';

export const handoverParts = { byMember: { select: { name: true } } } satisfies Prisma.HandoverInclude;
export type HandoverRecord = Prisma.HandoverGetPayload<{ include: typeof handoverParts }>;

/** What is hashed. The name of the customer stands beside it, so that a person can be erased and the record stays true. */
export type HandoverContent = Pick<Handover, 'asBuilt' | 'pumpSerial' | 'breaker' | 'deviations' | 'warrantyFrom' | 'warrantyUntil'> & {
  readonly version: 1; readonly revisionId: string; readonly documentSha256: string; readonly proofs: readonly string[]; readonly ties?: Handover['ties'];
};

export function presentHandover(row: HandoverRecord): Handover {
  const { asBuilt, pumpSerial, breaker, deviations, warrantyFrom, warrantyUntil, ties = null } = JSON.parse(Buffer.from(row.content).toString('utf8')) as HandoverContent;
  return {
    jobId: row.jobId, asBuilt, pumpSerial, breaker, deviations, warrantyFrom, warrantyUntil, customerName: row.customerName, handedOverAt: row.handedOverAt.toISOString(),
    sha256: row.sha256, by: row.byMember.name, ties,
  };
}
