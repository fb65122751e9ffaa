import { type GivenTimes, type LocateRule, type LocateTimes, locateTimes, ruleAmong, UnknownDay } from '@yardfall/contracts';
import { dayAt } from '../jobs/propertyDay.ts';

export interface StoredClock {
  readonly ruleVersion: string | null;
  readonly legalStartAt: Date | null;
  readonly expiresAt: Date | null;
  readonly renewByAt: Date | null;
}

/** A ticket as the center took it, where the property stands. */
export interface Taken {
  readonly requestedAt: string;
  readonly timeZone: string;
  readonly given?: GivenTimes | undefined;
}

/** An unknown rule leaves the clock empty, whatever the center wrote, and the verdict refuses for as long as it is. */
export function clockOf(rules: readonly LocateRule[], state: string, taken: Taken): StoredClock {
  return clockBy(ruleAmong(rules, state, dayAt(new Date(taken.requestedAt), taken.timeZone)), taken);
}

export function clockBy(rule: LocateRule | null, { requestedAt, timeZone, given }: Taken): StoredClock {
  const times = rule === null ? null : timesOrNull(() => locateTimes(rule, requestedAt, timeZone, given));
  const date = (text: string | undefined) => (text === undefined ? null : new Date(text));
  return { ruleVersion: rule?.version ?? null, legalStartAt: date(times?.legalStartAt), expiresAt: date(times?.expiresAt), renewByAt: date(times?.renewByAt) };
}

/** Whether it lets dig at a time at which the clock before did not. */
export function isLooser(clock: StoredClock, before: StoredClock): boolean {
  if (clock.legalStartAt === null || clock.expiresAt === null) return false;
  return before.legalStartAt === null || before.expiresAt === null || clock.legalStartAt < before.legalStartAt || clock.expiresAt > before.expiresAt;
}

function timesOrNull(count: () => LocateTimes): LocateTimes | null {
  try {
    return count();
  } catch (error) {
    if (error instanceof UnknownDay) return null;
    throw error;
  }
}
