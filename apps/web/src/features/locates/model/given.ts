import { instantIn } from '../../../lib/zoneTime.ts';

export interface Given {
  readonly startAt: string | null;
  readonly expiresAt: string | null;
}

/** Start and end as they were typed, in the time of the property; null when they cannot be: half a time, or an end before the start. */
export function givenIn(timeZone: string, field: (name: string) => string): Given | null {
  const [start, end] = [field('startAt').slice(0, 16), field('expiresAt').slice(0, 16)];
  const given = { startAt: start === '' ? null : instantIn(timeZone, start), expiresAt: end === '' ? null : instantIn(timeZone, end) };
  if ((start !== '' && given.startAt === null) || (end !== '' && given.expiresAt === null)) return null;
  return given.startAt !== null && given.expiresAt !== null && given.expiresAt <= given.startAt ? null : given;
}
