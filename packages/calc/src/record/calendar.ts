/** Days from 1970-01-01 of a date of the Gregorian calendar. Source: era arithmetic of civil dates, from memory. Checked against: known day numbers. */
export function dayNumber(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146097 + dayOfEra - 719468;
}

export interface CivilDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** Date of a day number; the inverse of `dayNumber`. */
export function dateOf(day: number): CivilDate {
  const shifted = day + 719468;
  const era = Math.floor(shifted / 146097);
  const dayOfEra = shifted - era * 146097;
  const yearOfEra = Math.floor((dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) / 365);
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const shiftedMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const month = shiftedMonth < 10 ? shiftedMonth + 3 : shiftedMonth - 9;
  return {
    year: yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, day: dayOfYear - Math.floor((153 * shiftedMonth + 2) / 5) + 1,
  };
}

/** Day number of a date, or null for a date that no calendar has: its number is that of another one. */
export function realDay(year: number, month: number, day: number): number | null {
  const number = dayNumber(year, month, day);
  const back = dateOf(number);
  return back.month === month && back.day === day ? number : null;
}

const two = (value: number): string => String(value).padStart(2, '0');

/** Minutes from 1970-01-01T00:00 as text in the record's own clock. */
export function timeText(minutes: number): string {
  const day = Math.floor(minutes / 1440);
  const { year, month, day: dayOfMonth } = dateOf(day);
  const left = minutes - day * 1440;
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(dayOfMonth)}T${two(Math.floor(left / 60))}:${two(left % 60)}`;
}
