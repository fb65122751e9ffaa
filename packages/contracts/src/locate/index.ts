export { isWorkingDay, locateTimes, UnknownDay, type GivenTimes, type LocateTimes } from './clock.ts';
export { type HolidayList } from './holidays.ts';
export { holidayList, knownHolidays, type HolidayName } from './holidayLists.ts';
export { locateRule, locateRules, ruleAmong, unconfirmed, type LocateRule } from './rules.ts';
export { jobVerdict, ticketVerdict, type LocateAnswerWord, type TicketForVerdict } from './verdict.ts';
