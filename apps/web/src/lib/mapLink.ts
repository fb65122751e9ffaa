/**
 * A link that opens the map which the phone has. Both schemes name no company's map and need no signal to be followed: `geo:` is the standard one (RFC 5870),
 * which iPhones and iPads do not know; they open `maps:`.
 */
export function mapLink(address: string, device: { readonly userAgent: string; readonly maxTouchPoints: number }): string {
  const place = encodeURIComponent(address);
  return knowsMapsOnly(device) ? `maps:?q=${place}` : `geo:0,0?q=${place}`;
}

/** An iPad says that it is a desk machine; no desk machine of its kind has a screen to touch. */
function knowsMapsOnly({ userAgent, maxTouchPoints }: { readonly userAgent: string; readonly maxTouchPoints: number }): boolean {
  return /iPhone|iPad|iPod/.test(userAgent) || (userAgent.includes('Macintosh') && maxTouchPoints > 1);
}
