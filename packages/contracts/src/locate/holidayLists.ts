import type { Holiday, HolidayDate, HolidayList } from './holidays.ts';

const fixed = (month: number, day: number): HolidayDate => ({ kind: 'fixed', month, day, observed: 'nearest' });
const weekday = (month: number, day: number, nth: number, plus = 0): HolidayDate => ({ kind: 'weekday', month, weekday: day, nth, plus });
const dates = (...list: string[]): HolidayDate => ({ kind: 'dates', dates: list });

/** Holidays by name, for the rule sets here and for the ones that an owner enters. */
export const knownHolidays = {
  newYear: fixed(1, 1),
  king: weekday(1, 1, 3),
  presidents: weekday(2, 1, 3),
  goodFriday: { kind: 'easter', plus: -2 },
  confederateMemorialApril: weekday(4, 1, 4),
  arborDay: weekday(4, 5, -1),
  confederateMemorialMay: fixed(5, 10),
  memorial: weekday(5, 1, -1),
  juneteenth: fixed(6, 19),
  independence: fixed(7, 4),
  labor: weekday(9, 1, 1),
  columbus: weekday(10, 1, 2),
  election: weekday(11, 1, 1, 1),
  veterans: fixed(11, 11),
  thanksgiving: weekday(11, 4, 4),
  afterThanksgiving: weekday(11, 4, 4, 1),
  christmasEve: fixed(12, 24),
  christmas: fixed(12, 25),
  // Where the eve and the day are kept on the same day, the law does not say whether another follows.
  christmasEveAgain: dates('2027-12-23', '2028-12-26'),
  // Which days beside Christmas are kept changes with the year, and is declared late.
  christmasDays: dates('2026-12-24', '2026-12-28', '2027-12-23', '2027-12-27', '2027-12-28', '2028-12-22', '2028-12-26', '2028-12-27'),
} as const satisfies Record<string, HolidayDate>;

export type HolidayName = keyof typeof knownHolidays;
export const holidayNames = Object.keys(knownHolidays) as [HolidayName, ...HolidayName[]];

export function holidayList(source: string, sure: readonly HolidayName[], unsure: readonly HolidayName[] = []): HolidayList {
  const holidays: Holiday[] = [...sure.map((name) => ({ name, on: knownHolidays[name], sure: true })), ...unsure.map((name) => ({ name, on: knownHolidays[name], sure: false }))];
  return { source, from: '2026-01-01', until: '2028-12-31', holidays };
}

const everywhere = ['newYear', 'memorial', 'independence', 'labor', 'thanksgiving', 'christmas'] as const;

/** The days that the center of a state does not count, each list with where it was read. */
export const holidayLists = {
  SC: holidayList('S.C. Code 53-5-10, from memory', [...everywhere, 'king', 'presidents', 'veterans', 'afterThanksgiving'], ['confederateMemorialMay', 'juneteenth', 'columbus', 'election', 'christmasEve', 'christmasDays']),
  NC: holidayList('State holidays as listed by the Office of State Human Resources', [...everywhere, 'king', 'goodFriday', 'veterans', 'afterThanksgiving'], ['juneteenth', 'christmasEve', 'christmasDays']),
  FL: holidayList('Fla. Stat. 556.102(1)', [...everywhere, 'king', 'afterThanksgiving', 'christmasEve'], ['christmasEveAgain']),
  AL: holidayList('Ala. Code 37-15-2, as printed by Alabama 811 in 2019', [...everywhere, 'afterThanksgiving', 'christmasEve'], ['veterans', 'christmasEveAgain']),
  VA: holidayList('Va. Code 2.2-3300, from memory', [...everywhere, 'king', 'presidents', 'juneteenth', 'columbus', 'election', 'veterans', 'afterThanksgiving'], ['christmasEve', 'christmasDays']),
  KS: holidayList('K.S.A. 66-1802, the list from memory', [...everywhere, 'afterThanksgiving'], ['king', 'presidents', 'juneteenth', 'columbus', 'veterans', 'christmasEve', 'christmasDays']),
  NE: holidayList('Neb. Rev. Stat. 76-2304 (state and national holidays), the days from memory', [...everywhere, 'king', 'presidents', 'arborDay', 'juneteenth', 'columbus', 'veterans', 'afterThanksgiving'], ['christmasEve', 'christmasDays']),
  TN: holidayList('Legal holidays of the state, from memory', [...everywhere, 'king', 'presidents', 'goodFriday', 'veterans'], ['juneteenth', 'columbus', 'afterThanksgiving', 'christmasEve', 'christmasDays']),
} as const;
