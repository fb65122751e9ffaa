import type { Complaint } from '@yardfall/contracts';
import { DateTime } from 'luxon';

export type Urgency = 'houseEntered' | 'normal' | 'leakTestFirst';

/** Ours: water on dry days is not rain, so a leak test comes first; water in the house is a visit within 3 working days. */
export function urgencyOf(complaint: Pick<Complaint, 'enteredHouse' | 'onDryDays'>): Urgency {
  if (complaint.onDryDays) return 'leakTestFirst';
  return complaint.enteredHouse ? 'houseEntered' : 'normal';
}

/** Working days between the call and the visit when water came into the house (ours). */
export const visitWithin = 3;

/** The last day for that visit in the property's zone: Saturdays and Sundays do not count. */
export function visitBy(called: Date, timeZone: string): string {
  let day = DateTime.fromJSDate(called, { zone: timeZone }).startOf('day');
  for (let left = visitWithin; left > 0; ) {
    day = day.plus({ days: 1 });
    if (day.weekday < 6) left -= 1;
  }
  return day.toFormat('yyyy-MM-dd');
}
