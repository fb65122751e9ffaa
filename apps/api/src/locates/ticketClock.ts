import { type LocateRule, type LocateTimes, locateTimes, ruleAmong, UnknownDay } from '@yardfall/contracts';
import { dayAt } from '../jobs/propertyDay.ts';

export interface StoredClock {
  readonly ruleVersion: string | null;
  readonly legalStartAt: Date | null;
  readonly expiresAt: Date | null;
  readonly renewByAt: Date | null;
}

/** An unknown rule leaves the clock empty, and the verdict refuses for as long as it is. */
export function clockOf(rules: readonly LocateRule[], state: string, requestedAt: string, timeZone: string): StoredClock {
  const rule = ruleAmong(rules, state, dayAt(new Date(requestedAt), timeZone));
  const times = rule === null ? null : timesOrNull(() => locateTimes(rule, requestedAt, timeZone));
  const date = (text: string | undefined) => (text === undefined ? null : new Date(text));
  return { ruleVersion: rule?.version ?? null, legalStartAt: date(times?.legalStartAt), expiresAt: date(times?.expiresAt), renewByAt: date(times?.renewByAt) };
}

function timesOrNull(count: () => LocateTimes): LocateTimes | null {
  try {
    return count();
  } catch (error) {
    if (error instanceof UnknownDay) return null;
    throw error;
  }
}
