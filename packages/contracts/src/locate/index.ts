export { isWorkingDay, locateTimes, UnknownDay, type GivenTimes, type LocateTimes } from './clock.ts';
export { enteredRule, enteredVersion, ruleProblem, type EnteredRule } from './entered.ts';
export { type HolidayList } from './holidays.ts';
export { holidayList, holidayNames, knownHolidays, type HolidayName } from './holidayLists.ts';
export { locateRule, locateRules, ruleAmong, unconfirmed, type LocateRule } from './rules.ts';
export { privateLineKinds, privateLineSteps, privateLineWarnings, privateQuestions, privateStates, type PrivateAnswer, type PrivateLineKind, type PrivateQuestion, type PrivateState } from './privateLines.ts';
export { isStop, stopsOf, ticketEventKinds, type TicketEvent, type TicketEventKind } from './stops.ts';
export { jobVerdict, ticketVerdict, type LocateAnswerWord, type TicketForVerdict } from './verdict.ts';
