import { wallClockIn } from './zoneTime.ts';

const day = 86_400_000;

/** A legal time at midnight is told by its day: a start as the day that begins, an end as the day that is over then. */
export function wholeDay(moment: string, timeZone: string, which: 'start' | 'end'): string | null {
  const at = new Date(moment);
  if (!wallClockIn(timeZone, at).endsWith('T00:00')) return null;
  return wallClockIn(timeZone, which === 'start' ? at : new Date(at.getTime() - day / 2)).slice(0, 10);
}
