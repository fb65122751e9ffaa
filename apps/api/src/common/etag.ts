import type { RequestInfo } from './actor.ts';
import { DomainError } from './errors.ts';

export function etag(version: number): string {
  return `"${version}"`;
}

/** The version that the caller last saw, for the where clause of the update. */
export function expectedVersion(request: RequestInfo): number {
  if (request.ifMatch === null) throw new DomainError('conflict.preconditionRequired');
  const match = /^(?:W\/)?"(\d{1,9})"$/.exec(request.ifMatch.trim());
  if (match?.[1] === undefined) throw new DomainError('conflict.stale');
  return Number(match[1]);
}

/** After the row was locked or read in the transaction of the change. */
export function requireVersion(request: RequestInfo, version: number): void {
  if (expectedVersion(request) !== version) throw new DomainError('conflict.stale', { version });
}
