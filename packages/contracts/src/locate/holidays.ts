/**
 * Days that a center does not count, per state. All from memory: no source was at hand, so each list says so
 * and the office checks it at set-up. A date beyond `until` is not known, and an unknown day refuses.
 */
export interface HolidayList {
  readonly source: string;
  readonly from: string;
  readonly until: string;
  readonly days: readonly string[];
}

const newYear = ['2026-01-01', '2027-01-01'];
const king = ['2026-01-19', '2027-01-18'];
const presidents = ['2026-02-16', '2027-02-15'];
const goodFriday = ['2026-04-03', '2027-03-26'];
const memorial = ['2026-05-25', '2027-05-31'];
const juneteenth = ['2026-06-19', '2027-06-18'];
const independence = ['2026-07-03', '2027-07-05'];
const labor = ['2026-09-07', '2027-09-06'];
const columbus = ['2026-10-12', '2027-10-11'];
const election = ['2026-11-03', '2027-11-02'];
const veterans = ['2026-11-11', '2027-11-11'];
const thanksgiving = ['2026-11-26', '2027-11-25'];
const afterThanksgiving = ['2026-11-27', '2027-11-26'];
const christmasEve = ['2026-12-24', '2027-12-23'];
const christmas = ['2026-12-25', '2027-12-24'];
const afterChristmas = ['2026-12-28', '2027-12-27'];
const confederateMemorialMay = ['2026-05-11', '2027-05-10'];
const confederateMemorialApril = ['2026-04-27', '2027-04-26'];
const davis = ['2026-06-01', '2027-06-07'];

const common = [...newYear, ...king, ...memorial, ...independence, ...labor, ...veterans, ...thanksgiving, ...christmas];

const lists: Readonly<Record<string, readonly string[]>> = {
  SC: [...common, ...presidents, ...confederateMemorialMay, ...afterThanksgiving, ...christmasEve, ...afterChristmas],
  NC: [...common, ...goodFriday, ...afterThanksgiving, ...christmasEve, ...afterChristmas],
  FL: [...common, ...afterThanksgiving],
  AL: [...common, ...presidents, ...confederateMemorialApril, ...davis, ...juneteenth, ...columbus],
  VA: [...common, ...presidents, ...juneteenth, ...columbus, ...election, ...afterThanksgiving],
};

export function holidaysOf(state: string): HolidayList {
  const days = lists[state];
  if (days === undefined) throw new RangeError(`no holiday list for ${state}`);
  return { source: 'from memory', from: '2026-01-01', until: '2027-12-31', days: [...days].sort() };
}
