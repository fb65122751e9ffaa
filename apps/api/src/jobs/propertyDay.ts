import { DateTime } from 'luxon';

/** The calendar day where the property stands, YYYY-MM-DD: offers and legal clocks end with it. */
export function dayAt(instant: Date, timeZone: string): string {
  return DateTime.fromJSDate(instant, { zone: timeZone }).toFormat('yyyy-MM-dd');
}

/** A stored DATE column as the day that it names. */
export function dayOf(date: Date): string {
  return date.toISOString().slice(0, 10);
}
