/** Less than this is the way through the network and no fault of a clock [s]. */
const sameClock = 30;
const longestBehind = 10 * 365 * 86_400;

/** How far the clock of a phone is behind ours [s], by what it said as it sent. */
export function clockBehind(now: Date, sentAt: string | null): number {
  if (sentAt === null) return 0;
  const seconds = Math.round((now.getTime() - Date.parse(sentAt)) / 1000);
  return Math.abs(seconds) < sameClock ? 0 : Math.max(-longestBehind, Math.min(longestBehind, seconds));
}

/** A moment of that phone by our clock; nothing it recorded lies ahead of its arrival. */
export function byOurClock(deviceTime: string, behind: number, now: Date): Date {
  return new Date(Math.min(Date.parse(deviceTime) + behind * 1000, now.getTime()));
}
