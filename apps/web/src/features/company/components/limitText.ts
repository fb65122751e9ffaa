import { isReached, limits, type Limit, type LimitId } from '@yardfall/calc';
import type { Text } from '../../../lib/reader.tsx';

/** "good from 1 in, stop at 0.5 in": a pair of values as this reader reads it. */
export function limitText(id: LimitId, pair: Pick<Limit, 'pass' | 'fail'>, { t, q }: Text): string {
  const limit: Limit = { ...limits[id], ...pair };
  const words = { pass: q(limit.quantity, limit.pass), fail: q(limit.quantity, limit.fail) };
  if (limit.sense === 'atLeast') return isReached(limit) ? t('limits.page.pair', words) : t('limits.page.passOnly', words);
  return isReached(limit) ? t('limits.page.pairMost', words) : t('limits.page.passOnlyMost', words);
}
