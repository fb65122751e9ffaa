import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';

/** What is sealed of a trail entry. */
export interface ChainRow {
  readonly id: string;
  readonly companyId: string;
  readonly actorKind: string;
  readonly actorId: string | null;
  readonly jobId: string | null;
  readonly action: string;
  readonly subjectId: string | null;
  readonly params: unknown;
  readonly requestId: string;
  readonly at: Date;
}

export const firstHash = Buffer.alloc(32);

/** SHA-256 over the hash before and the canonical JSON (RFC 8785) of the entry and its number. */
export function chainHash(previous: Uint8Array, number: bigint, row: ChainRow): Buffer {
  const { id, companyId, actorKind, actorId, jobId, action, subjectId, params, requestId } = row;
  const content = { number: String(number), id, companyId, actorKind, actorId, jobId, action, subjectId, params, requestId, at: row.at.toISOString() };
  return createHash('sha256').update(previous).update(canonicalize(content) ?? '').digest();
}
