/** One sentence in both languages; both must use the same placeholders. */
export interface Message {
  readonly en: string;
  readonly es: string;
}

/**
 * Keeps the keys of a catalogue file literal, so that a misspelt code does not compile.
 * Every key starts with the name of its file: `jobs.title` stands in catalogues/jobs.ts.
 *
 * Placeholders: `{name:quantity}` with a quantity of format.ts, and
 * `{n:plural|# pump|# pumps}`, where `#` is the number itself.
 */
export function catalogue<const T extends Record<string, Message>>(entries: T): T {
  return entries;
}
