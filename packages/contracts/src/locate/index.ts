export { isWorkingDay, locateTimes, UnknownDay, type LocateTimes } from './clock.ts';
export { type HolidayList } from './holidays.ts';
export { locateRule, locateRules, unconfirmed, type LocateRule } from './rules.ts';
export { jobVerdict, ticketVerdict, type LocateAnswerWord, type TicketForVerdict } from './verdict.ts';
