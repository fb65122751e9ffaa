import { FieldFact, type StoredFact } from '@yardfall/contracts';
import type { Prisma } from '../generated/prisma/client.ts';

export const factParts = { member: { select: { name: true } } } satisfies Prisma.FieldFactInclude;
export type FactRecord = Prisma.FieldFactGetPayload<{ include: typeof factParts }>;

/** The columns of a fact; what is said by its kind alone stands in the payload. */
export function factColumns(fact: FieldFact) {
  const { id, deviceId, seq, deviceTime, factVersion, revisionId, itemKey, requirementHash, seen, kind, ...payload } = fact;
  return { id, deviceId, seq, deviceTime: new Date(deviceTime), factVersion, revisionId, itemKey, requirementHash, seen, kind, payload };
}

export function factOf(row: FactRecord): FieldFact {
  const { id, deviceId, seq, factVersion, revisionId, itemKey, requirementHash, seen, kind } = row;
  return FieldFact.parse({ ...(row.payload as object), id, deviceId, seq, deviceTime: row.deviceTime.toISOString(), factVersion, revisionId, itemKey, requirementHash, seen, kind });
}

export function presentFact(row: FactRecord): StoredFact {
  return {
    fact: factOf(row), memberId: row.memberId, by: row.member.name, serverTime: row.serverTime.toISOString(), verdict: row.verdict as StoredFact['verdict'], reason: row.reason, clockBehind: row.clockBehind,
  };
}
