import type { DraftOperation } from '../designs.ts';
import { partOf, partsMeet, partsNeeded, valueAt } from './operations.ts';

/** An operation that was stored after the base of the one at hand. */
export interface LaterOperation {
  readonly part: string;
  readonly removed: boolean;
  readonly memberId: string;
}

export interface Conflict {
  readonly operation: DraftOperation;
  readonly part: string;
  readonly path: string;
  readonly memberId: string;
  readonly removed: boolean;
  /** What the other person left there. */
  readonly theirs: unknown;
}

export function isRemovalOfPart(operation: DraftOperation): boolean {
  return operation.kind === 'remove' && operation.path.join('.') === partOf(operation);
}

/**
 * Edits that meet what somebody changed since their base. The person chooses; nothing is applied.
 * An edit that would leave what already stands there is no conflict.
 */
export function conflictsOf(document: unknown, operations: readonly DraftOperation[], later: readonly LaterOperation[]): Conflict[] {
  return operations.flatMap((operation) => {
    const part = partOf(operation);
    const meeting = later.findLast((other) => partsMeet(other.part, part)) ?? later.findLast((other) => other.removed && partsNeeded(operation).includes(other.part));
    if (meeting === undefined) return [];
    const path = operation.kind === 'connect' ? ['system', 'parts', `@${operation.part}`, 'drainsTo'] : operation.path;
    const theirs = valueAt(document, path);
    if (operation.kind === 'replace' && same(theirs, operation.value)) return [];
    return [{ operation, part: meeting.part, path: path.join('.'), memberId: meeting.memberId, removed: theirs === undefined, theirs: theirs ?? null }];
  });
}

function same(a: unknown, b: unknown): boolean {
  return a !== undefined && JSON.stringify(a) === JSON.stringify(b);
}
