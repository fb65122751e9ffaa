/** What the number keyboard of a phone has no key for. */
export type FigureKey = 'minus' | 'feet' | { readonly sixteenths: number };

/** A minus, feet with their mark, and inches: whole, decimal, a fraction, or whole with a fraction. */
const written = /^(-?)\s*(?:(\d+')\s*)?(?:(\d+)\/(\d+)|(\d*\.?\d*)(?:\s+(\d+)\/(\d+))?)"?$/;

/** The figure after a key; a key that cannot follow changes nothing. */
export function keyed(text: string, key: FigureKey): string {
  const tidy = text.trim();
  if (key === 'minus') return tidy.startsWith('-') ? tidy.slice(1) : `-${tidy}`;
  if (key === 'feet') return /^-?\d+$/.test(tidy) ? `${tidy}' ` : text;
  const [whole, sign = '', feet, top, bottom, inches = '', over, under] = written.exec(tidy) ?? [];
  if (whole === undefined) return text;
  const fraction = top === undefined ? (over === undefined ? 0 : Number(over) / Number(under)) : Number(top) / Number(bottom);
  const body = sixteenthsText(Math.round((Number(inches === '.' ? '0' : inches) + fraction) * 16) + key.sixteenths);
  return feet === undefined ? sign + body : `${sign}${feet} ${body}"`;
}

/** `53` sixteenths are `3 5/16`. */
function sixteenthsText(count: number): string {
  let [top, bottom] = [count % 16, 16];
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  const whole = Math.floor(count / 16);
  if (top === 0) return String(whole);
  return `${whole === 0 ? '' : `${String(whole)} `}${String(top)}/${String(bottom)}`;
}

/** Inches behind a foot mark need none of their own: the keyboard has no key for it. */
export function closed(text: string): string {
  return /^-?\d+'\s*[\d./ ]*\d\s*$/.test(text) ? `${text.trim()}"` : text;
}
