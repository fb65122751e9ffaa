import { DateTime } from 'luxon';
import { datesOf } from './locate/holidays.ts';
import { knownHolidays, type HolidayName } from './locate/holidayLists.ts';

interface CancellationRule {
  /** Business days after the day of the contract. */
  readonly days: number;
  readonly source: string;
}

/** A sale at the customer's home may be cancelled until midnight of the third business day after it; Saturday is one. */
const federal: CancellationRule = { days: 3, source: '16 CFR 429.0 and 429.1' };

/** States that give longer. From memory, to be verified with the state's own text; a longer time only holds the work back. */
const states: Readonly<Record<string, CancellationRule>> = {
  AK: { days: 5, source: 'AS 45.02.350, from memory' },
  // Five days stand for buyers of 65 and more, whose age nobody asks.
  CA: { days: 5, source: 'Civil Code 1689.6, from memory' },
};

export function cancellationRule(state: string): CancellationRule {
  return states[state] ?? federal;
}

/** Federal holidays, 5 U.S.C. 6103(a). Where one is kept on a weekday beside its date neither day counts, so that nobody begins too early. */
const federalHolidays: readonly HolidayName[] = ['newYear', 'king', 'presidents', 'memorial', 'juneteenth', 'independence', 'labor', 'columbus', 'veterans', 'thanksgiving', 'christmas'];

function holidaysOf(year: number): ReadonlySet<string> {
  return new Set(federalHolidays.flatMap((name) => {
    const on = knownHolidays[name];
    return [...datesOf(on, year, year + 1), ...(on.kind === 'fixed' ? datesOf({ ...on, observed: 'never' }, year, year + 1) : [])];
  }));
}

/** The moment at which the customer's time to cancel is over: midnight at the end of the last business day, where the property stands, with the difference of its clock. */
export function cancelUntil(acceptedAt: string, { state, timeZone }: { readonly state: string; readonly timeZone: string }): string {
  const signed = DateTime.fromISO(acceptedAt, { zone: timeZone });
  const holidays = holidaysOf(signed.year);
  let day = signed.startOf('day');
  for (let left = cancellationRule(state).days; left > 0;) {
    day = day.plus({ days: 1 });
    if (day.weekday !== 7 && !holidays.has(day.toFormat('yyyy-MM-dd'))) left -= 1;
  }
  const text = day.plus({ days: 1 }).startOf('day').toISO({ suppressMilliseconds: true });
  if (text === null) throw new RangeError(`not a moment in a time zone: ${acceptedAt} ${timeZone}`);
  return text;
}
