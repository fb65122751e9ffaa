const clocks = new Map<string, Intl.DateTimeFormat>();

/** Making one takes a phone ten milliseconds and more, and a list asks for the same few again and again. */
function clockOf(timeZone: string): Intl.DateTimeFormat {
  const clock = clocks.get(timeZone) ?? new Intl.DateTimeFormat('en-CA', {
    timeZone, hourCycle: 'h23', year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit',
  });
  clocks.set(timeZone, clock);
  return clock;
}

/** `YYYY-MM-DDTHH:mm` as a clock in this zone shows the moment; the form of a date-and-time field. */
export function wallClockIn(timeZone: string, moment: Date): string {
  const parts = clockOf(timeZone).formatToParts(moment);
  const of = (type: Intl.DateTimeFormatPartTypes) => parts.find((part) => part.type === type)?.value ?? '';
  return `${of('year')}-${of('month')}-${of('day')}T${of('hour')}:${of('minute')}`;
}

/** The moment at which a clock in this zone shows `YYYY-MM-DDTHH:mm`; null when that is no time. In the hour that summer time skips, the later side. */
export function instantIn(timeZone: string, wallClock: string): string | null {
  const wanted = Date.parse(`${wallClock}:00Z`);
  if (!/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/.test(wallClock) || Number.isNaN(wanted)) return null;
  let moment = wanted;
  // The second turn settles a clock that changes between the first guess and the moment itself.
  for (let turn = 0; turn < 2; turn += 1) moment = wanted - (Date.parse(`${wallClockIn(timeZone, new Date(moment))}:00Z`) - moment);
  return new Date(moment).toISOString();
}
