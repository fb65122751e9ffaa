import type { DesignDocument, Utility } from '@yardfall/calc';
import type { PrivateAnswer, PrivateLineKind } from '../locate/privateLines.ts';
import type { TicketForVerdict } from '../locate/verdict.ts';

/** A line in the ground that the design does not draw: marked by a utility, or declared by the homeowner. */
export interface GroundLine {
  /** Stable for one line of one job: `t-gas`, `p-septic`. */
  readonly id: string;
  /** As the ticket names it; the code of its words for a private line. */
  readonly name: string;
  readonly isPrivate: boolean;
}
export type Ground = readonly GroundLine[];

/** Words by which a line is known to be of a kind, in the languages of the program. */
const words: readonly (readonly [kind: string, words: RegExp])[] = [
  ['gas', /\bgas\b/i], ['power', /power|electri|energ|lights?\b|luces/i], ['communication', /commun|comunic|phone|fono|cable|fiber|fibra|internet/i],
  ['water', /water|agua|irrigation|riego/i], ['sewer', /sewer|alcantaril|septic|s[ée]ptic/i], ['irrigation', /irrigation|riego/i], ['pool', /pool|alberca|piscina/i], ['septic', /septic|s[ée]ptic/i],
  ['fence', /fence|cerca/i],
];
const kindsOf = (name: string): readonly string[] => words.filter(([, pattern]) => pattern.test(name)).map(([kind]) => kind);

const privateWords: Readonly<Record<PrivateLineKind, string>> = {
  irrigation: 'irrigation', pool: 'pool', septic: 'septic', gasAfterMeter: 'gas', lights: 'power', subPanel: 'power', invisibleFence: 'fence',
};

/**
 * Lines that somebody said are there, beside those that the design draws: whatever a ticket of the job answered "marked", and the homeowner's own.
 * A drawn line of the same kind stands for what the ticket names.
 */
export function groundLines({ site: { utilities } }: DesignDocument, tickets: readonly Pick<TicketForVerdict, 'draft' | 'answers'>[], declared: readonly PrivateAnswer[]): Ground {
  const marked = tickets.filter(({ draft }) => !draft).flatMap(({ answers }) => answers.filter(({ answer }) => answer === 'marked').map(({ utility }) => utility));
  const public_ = marked.filter((name) => !utilities.some((drawn) => isSame(drawn, name))).map((name): GroundLine => ({ id: `t-${slug(name)}`, name, isPrivate: false }));
  const own = declared.flatMap(({ question, state }): GroundLine[] =>
    question === 'locator' || state !== 'yes' || utilities.some((drawn) => isOwn(drawn, question)) ? [] : [{ id: `p-${question}`, name: `checklists.private.${question}`, isPrivate: true }]);
  return [...new Map([...public_, ...own].map((line) => [line.id, line])).values()].toSorted((a, b) => (a.id < b.id ? -1 : 1));
}

function isSame({ kind, name }: Utility, answered: string): boolean {
  const [drawn, said] = [name.toLowerCase(), answered.trim().toLowerCase()];
  return drawn === said || kindsOf(answered).includes(kind);
}

function isOwn({ kind, name }: Utility, question: PrivateLineKind): boolean {
  return kindsOf(name).includes(privateWords[question]) && (kind === 'private' || question === 'irrigation');
}

function slug(name: string): string {
  const plain = name.normalize('NFKD').replace(/[\u0300-\u036F]/g, '').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '').slice(0, 40);
  return plain === '' ? Array.from(name).slice(0, 8).map((letter) => (letter.codePointAt(0) ?? 0).toString(16)).join('') : plain;
}
