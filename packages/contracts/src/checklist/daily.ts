import type { FieldFact, Requirement } from '../checklists.ts';

/** A fact with the moment [ms] at which it was recorded or taken, by the office's clock. */
export interface Timed {
  readonly fact: FieldFact;
  readonly at: number;
}

const days = new Map<string, Intl.DateTimeFormat>();

/** The calendar day in a time zone, YYYY-MM-DD. */
export function dayIn(zone: string, at: number): string {
  let format = days.get(zone);
  if (format === undefined) {
    format = new Intl.DateTimeFormat('en-CA', { timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit' });
    days.set(zone, format);
  }
  return format.format(at);
}

const minute = 60_000;
/** No day is longer, not even when clocks are put back. */
const longestDay = 26 * 60;

/** The first moment [ms] of the next day; days change on a whole minute. */
export function endOfDay(zone: string, at: number): number {
  const [start, today] = [Math.floor(at / minute), dayIn(zone, at)];
  let [before, after] = [0, longestDay];
  while (after - before > 1) {
    const middle = Math.floor((before + after) / 2);
    if (dayIn(zone, (start + middle) * minute) === today) before = middle;
    else after = middle;
  }
  return (start + after) * minute;
}

/** What a look consists of: the photo, the name of who looked, the tick. */
export function isLook({ kind }: FieldFact): boolean {
  return kind === 'photo' || kind === 'written' || kind === 'ticked';
}

/** What counts of a step that is asked for each day: the look of that day or of a later one. */
export function ofToday({ daily }: Requirement, evidence: readonly Timed[], today: number): readonly FieldFact[] {
  return evidence.filter(({ fact, at }) => daily === undefined || !isLook(fact) || dayIn(daily, at) >= dayIn(daily, today)).map(({ fact }) => fact);
}

/**
 * Until when [ms] the last look counts: to the end of its day. Null before the first; never, when it rained since.
 * @param everLooked whether it was ticked at any time
 */
export function lookedUntil({ daily, minPhotos, texts = [] }: Requirement, evidence: readonly Timed[], everLooked: boolean): number | null {
  if (daily === undefined || !everLooked) return null;
  const latest = (wanted: (fact: FieldFact) => boolean, count = 1) => evidence.filter(({ fact }) => wanted(fact)).map(({ at }) => at).sort((a, b) => b - a)[count - 1] ?? -Infinity;
  const oldest = Math.min(
    latest(({ kind }) => kind === 'ticked'),
    ...(minPhotos > 0 ? [latest(({ kind }) => kind === 'photo', minPhotos)] : []),
    ...texts.map((name) => latest((fact) => fact.kind === 'written' && fact.name === name)),
  );
  return oldest === -Infinity ? oldest : endOfDay(daily, oldest);
}
