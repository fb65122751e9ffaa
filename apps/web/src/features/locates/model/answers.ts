import type { DesignDocument } from '@yardfall/calc';
import type { Response } from '../../../lib/tickets.ts';
import { languages, messages, type MessageCode } from '@yardfall/text';

type Drawn = DesignDocument['site']['utilities'][number];

/** Words by which a utility on a ticket is known to be of a kind that designs draw, in the languages of the program. */
const ofKind: readonly (readonly [kind: string, words: RegExp])[] = [
  ['gas', /\bgas\b/i], ['power', /power|electri|energ/i], ['communication', /commun|comunic|phone|fono|cable|fiber|fibra|internet/i], ['water', /water|agua|irrigation|riego/i], ['sewer', /sewer|alcantaril/i],
];

/** Lines of this utility's kind that the design draws. */
export function drawnOf(utility: string, drawn: readonly Drawn[]): readonly Drawn[] {
  const kinds = ofKind.filter(([, words]) => words.test(utility)).map(([kind]) => kind);
  return drawn.filter(({ kind }) => kinds.includes(kind));
}

/** An answer that says where the lines are: nothing more is asked for. */
export function isAnswered({ answer }: Pick<Response, 'answer'>): boolean {
  return answer === 'marked' || answer === 'clear';
}

/** Names as typed, one a line or with commas between, each once. */
export function namesIn(typed: string): string[] {
  return [...new Set(typed.split(/[\n,;]/).map((name) => name.trim()).filter(Boolean))];
}

const usual = ['power', 'gas', 'water', 'sewer', 'phone', 'cable', 'communication', 'waterAndReclaimed'] as const;

/** The code of a usual utility, in whichever language it was written on the ticket; null for any other name. */
export function usualCode(utility: string): MessageCode | null {
  const codes = usual.map((name) => `locates.usual.${name}` as const);
  return codes.find((code) => languages.some((language) => messages[code][language] === utility)) ?? null;
}

/** The utilities that the form of a ticket offers by name. */
export const usualOnForm = ['power', 'gas', 'water', 'sewer', 'phone', 'cable'] as const;

/** Those that the form offers, and the names that are typed. */
export function sortUtilities(utilities: readonly string[], words: (name: (typeof usualOnForm)[number]) => string): { readonly usual: readonly string[]; readonly others: readonly string[] } {
  const usual = usualOnForm.filter((name) => utilities.includes(words(name)));
  const offered = new Set(usual.map(words));
  return { usual, others: utilities.filter((utility) => !offered.has(utility)) };
}

/** The utility of the ticket that a name means, in whatever case or language it is written; null when it is not there. */
export function onTicket(utilities: readonly string[], name: string): string | null {
  const code = usualCode(name);
  return utilities.find((utility) => utility.toLowerCase() === name.toLowerCase() || (code !== null && usualCode(utility) === code)) ?? null;
}
