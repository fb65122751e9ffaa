/** Address that opens the phone's own message with its text ready (RFC 5724); the number stays empty when none is known. */
export function smsLink(phone: string | null, body: string): string {
  const number = (phone ?? '').replace(/(?!^\+)[^\d]/g, '');
  return `sms:${number}?body=${encodeURIComponent(body)}`;
}

/** The link of the office as a whole address. */
export function wholeLink(link: string, origin: string): string {
  return new URL(link, origin).href;
}

/** A calendar day so many days after a moment, in the zone of the property. */
export function dayAfter(now: Date, days: number, timeZone: string): string {
  const parts = new Intl.DateTimeFormat('en-CA', { timeZone, year: 'numeric', month: '2-digit', day: '2-digit' }).format(now);
  const day = new Date(`${parts}T00:00:00Z`);
  day.setUTCDate(day.getUTCDate() + days);
  return day.toISOString().slice(0, 10);
}
