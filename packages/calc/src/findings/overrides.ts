import type { LimitOverride } from '../document/document.ts';
import { DocumentError } from '../document/error.ts';
import type { Limit } from './limit.ts';
import { limits, type LimitId } from './limits.ts';

/** A limit as it stands for one document: the built-in one, or the company's with who set it, when and why. */
export interface LimitInForce extends Limit {
  readonly override: Pick<LimitOverride, 'by' | 'at' | 'why'> | null;
}

export type Limits = Readonly<Record<LimitId, LimitInForce>>;

export const isLimitId = (id: string): id is LimitId => Object.hasOwn(limits, id);

/** Whether another pair of values lets something through that the limit would have held. */
export function isLooser(id: LimitId, { pass, fail }: Pick<LimitOverride, 'pass' | 'fail'>): boolean {
  const limit: Limit = limits[id];
  return limit.sense === 'atLeast' ? pass < limit.pass || fail < limit.fail : pass > limit.pass || fail > limit.fail;
}

/** Whether the values stand in order: a stop never before a caution. */
export function isOrdered(id: LimitId, { pass, fail }: Pick<LimitOverride, 'pass' | 'fail'>): boolean {
  return limits[id].sense === 'atLeast' ? fail <= pass : fail >= pass;
}

/**
 * Holds the limits that a company has set against the list: known, once each, in order, and a looser one with its reason.
 * Throws a DocumentError at the first that is not.
 */
export function checkOverrides(overrides: readonly LimitOverride[], path = '/limits'): void {
  const seen = new Set<string>();
  overrides.forEach((override, index) => {
    const at = `${path}/${index}`;
    if (!isLimitId(override.limit)) throw new DocumentError('document.unknownId', `${at}/limit`, { id: override.limit });
    if (seen.has(override.limit)) throw new DocumentError('document.duplicateId', `${at}/limit`, { id: override.limit });
    seen.add(override.limit);
    if (!isOrdered(override.limit, override)) throw new DocumentError('document.limitOrder', `${at}/fail`, { id: override.limit });
    if (isLooser(override.limit, override) && override.why.trim() === '') throw new DocumentError('document.limitNeedsReason', `${at}/why`, { id: override.limit });
  });
}

/** The limits in force: the built-in ones with what the company has set in their place. */
export function limitsInForce(overrides: readonly LimitOverride[]): Limits {
  const set = new Map(overrides.map((override) => [override.limit, override]));
  const entries = Object.entries(limits).map(([id, limit]): [string, LimitInForce] => {
    const own = set.get(id);
    if (own === undefined) return [id, { ...limit, override: null }];
    return [id, { ...limit, pass: own.pass, fail: own.fail, override: { by: own.by, at: own.at, why: own.why } }];
  });
  return Object.fromEntries(entries) as Record<LimitId, LimitInForce>;
}
