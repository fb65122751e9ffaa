import { type Alternative, type Choice, type ChoiceKind, type DesignDocument, diversionChoice, type Part } from '@yardfall/calc';
import { libraryDifferences, type LibraryEntry, libraryFields, type LibraryKind, type OptionsRequest } from '@yardfall/contracts';

const roleOf: Readonly<Record<LibraryKind, ChoiceKind>> = { pump: 'pump', channel: 'collector', channelGrate: 'collector', basinGrate: 'collector', pipe: 'pipe', basin: 'basin' };

/** The alternative that changes nothing. */
export const drawn = 'drawn';

/** What an alternative is bought as: its line of the price list stands for the line that the take-off names. */
export interface Bought {
  readonly choice: string;
  readonly alternative: string;
  readonly part: string;
  /** Codes of the take-off that the price of the entry stands for, by their beginning. */
  readonly instead: string;
  readonly priceCode: string;
}

export interface AskedOptions {
  readonly choices: readonly Choice[];
  readonly bought: readonly Bought[];
  /** Entry of the library behind each alternative: choice, alternative, entry. */
  readonly entries: readonly { readonly choice: string; readonly alternative: string; readonly part: string; readonly entry: string; readonly sha256: string }[];
}

/** What the take-off calls a thing of the library. A grate has no line of its own. */
const takenOffAs: Readonly<Partial<Record<LibraryKind, string>>> = { pump: 'pump', channel: 'channel.', pipe: 'pipe.', basin: 'basin.' };

/** The choices that were asked for, each with what is drawn first. What does not fit its part, or is the same as what is drawn, is no choice. */
export function askedOptions(document: DesignDocument, request: OptionsRequest, library: readonly LibraryEntry[]): AskedOptions {
  const diversions = request.diversions.flatMap((gutter) => diversionChoice(document, gutter) ?? []);
  const groups = request.picks.flatMap(({ part: id, entries }) => {
    const part = document.system.parts.find((one) => one.id === id);
    const picked = library.filter((entry) => entry.active && entries.includes(entry.id));
    return part === undefined ? [] : [...new Set(picked.map(({ content }) => content.kind))].map((kind) => groupOf(document, part, kind, picked.filter(({ content }) => content.kind === kind), library));
  }).filter(({ choice }) => choice.alternatives.length > 1);
  return {
    choices: [...diversions, ...groups.map(({ choice }) => choice)], bought: groups.flatMap(({ bought }) => bought),
    entries: groups.flatMap(({ choice, part, taken }) => taken.map((entry) => ({ choice: choice.id, alternative: entry.id, part, entry: entry.id, sha256: entry.sha256 }))),
  };
}

interface Group {
  readonly part: string;
  readonly choice: Choice;
  readonly bought: readonly Bought[];
  readonly taken: readonly LibraryEntry[];
}

function groupOf(document: DesignDocument, part: Part, kind: LibraryKind, picked: readonly LibraryEntry[], library: readonly LibraryEntry[]): Group {
  const id = `${part.id}:${kind}`;
  const taken = picked.filter(({ content, name }) => libraryDifferences(content, name, part).length > 0);
  const alternatives = taken.flatMap((entry): Alternative[] => {
    const fields = libraryFields(entry.content, entry.name, part);
    return fields === null ? [] : [{ id: entry.id, name: entry.name, set: [{ part: part.id, fields }] }];
  });
  const instead = takenOffAs[kind];
  const stamp = document.sources.library?.find((one) => one.part === part.id);
  const own = library.find((entry) => entry.id === stamp?.id && entry.content.kind === kind);
  const bought = instead === undefined ? [] : [...taken.map((entry) => ({ alternative: entry.id, entry })), ...(own === undefined ? [] : [{ alternative: drawn, entry: own }])]
    .flatMap(({ alternative, entry }): Bought[] => (entry.priceCode === null ? [] : [{ choice: id, alternative, part: part.id, instead, priceCode: entry.priceCode }]));
  return { part: part.id, choice: { id, kind: roleOf[kind], alternatives: [{ id: drawn, name: part.name, set: [] }, ...alternatives] }, bought, taken };
}
