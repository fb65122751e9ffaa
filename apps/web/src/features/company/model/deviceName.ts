/** Families of browsers and systems, each told by its word in the agent string; the first that fits is taken. */
const browsers = [['Edg', 'Edge'], ['OPR', 'Opera'], ['SamsungBrowser', 'Samsung Internet'], ['Firefox', 'Firefox'], ['CriOS', 'Chrome'], ['Chrome', 'Chrome'], ['Safari', 'Safari']] as const;
const systems = [['iPhone', 'iPhone'], ['iPad', 'iPad'], ['Android', 'Android'], ['Windows', 'Windows'], ['Mac OS X', 'Mac'], ['CrOS', 'Chromebook'], ['Linux', 'Linux']] as const;

/** What somebody is signed in on, as a person would call it; null when the string tells nothing. */
export function deviceName(userAgent: string): string | null {
  const word = (of: readonly (readonly [string, string])[]) => of.find(([mark]) => userAgent.includes(mark))?.[1];
  const names = [word(systems), word(browsers)].filter((name) => name !== undefined);
  return names.length === 0 ? null : names.join(', ');
}
