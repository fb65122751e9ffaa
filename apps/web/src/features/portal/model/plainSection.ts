import type { DesignDocument, Part } from '@yardfall/calc';
import { label, waterOf, type DisplayList } from '@yardfall/drawing';
import { isMessageCode, type MessageCode, type Params } from '@yardfall/text';

type Item = DisplayList['items'][number];
type TextItem = Extract<Item, { readonly kind: 'text' }>;
type Say = (code: MessageCode, params?: Params) => string;

/** Lettering that needs no knowledge of the trade. */
const kept: readonly string[] = ['drawing.exaggeration', 'drawing.trueScale', 'drawing.scaleBar', 'drawing.notDrawn'];
const levels: Readonly<Record<string, MessageCode>> = {
  'drawing.sill': 'portal.drawn.sill', 'drawing.waterOverSill': 'portal.drawn.over', 'drawing.waterBelowSill': 'portal.drawn.below',
};
/** The one text of each part that names it. */
const naming = new Set([
  'drawing.beside', 'drawing.besideAlike', 'drawing.leader', 'drawing.channel', 'drawing.catchBasin', 'drawing.pipe', 'drawing.underdrain', 'drawing.swale', 'drawing.basin', 'drawing.pump', 'drawing.line', 'drawing.gutter', 'drawing.roofLine',
]);

/** Kinds of part that have words for a customer, in the order in which the water meets them. */
const orderOfKinds: readonly Part['kind'][] = ['gutter', 'roofLine', 'swale', 'channel', 'catchBasin', 'underdrain', 'pipe', 'basin', 'pump', 'dischargeLine', 'outlet'];

export function wordsOfKinds(document: DesignDocument): readonly MessageCode[] {
  const there = new Set(document.system.parts.map((part) => kindTold(part, document)));
  const codes = orderOfKinds.filter((kind) => there.has(kind)).map((kind) => `portal.word.${kind}`);
  return ['portal.word.sill', ...codes.filter(isMessageCode)];
}

/** A pipe that takes roof water alone is a roof pipe to its owner, whatever it is to the trade. */
function kindTold({ id, kind }: Part, { system }: DesignDocument): Part['kind'] {
  return kind === 'pipe' && waterOf(system.parts, id) === 'roof' ? 'roofLine' : kind;
}

/** The same section with plain names in place of levels, sizes and falls: the customer's reading of it. */
export function plainSection(drawn: DisplayList, document: DesignDocument, say: Say): DisplayList {
  const kinds = new Map(document.system.parts.map((part) => [part.id, kindTold(part, document)]));
  const named = new Set<string>();
  const items = drawn.items.flatMap((item): Item[] => {
    // Water that belongs to nothing built is the water table.
    if (item.part === null && item.role === 'water') return [];
    if (item.kind === 'mark') return item.mark !== 'levelMark' || item.role === 'water' || item.role === 'sill' ? [item] : [];
    // Lines that lead to a word which is left out, and levels at which machines switch, would mean nothing here.
    if (item.kind === 'line') return (item.of && !naming.has(item.of)) || (item.dash === 'dash' && kinds.get(item.part ?? '') === 'basin') ? [] : [item];
    if (item.kind !== 'text') return [item];
    const words = wordsFor(item, { kinds, document, say });
    if (words === null) return kept.includes(item.label.code) ? [item] : [];
    // A second drain slot beside the first needs no second name.
    const who = item.label.code.startsWith('drawing.beside') ? '' : (item.part ?? '');
    if (item.part !== null && item.role !== 'water' && named.has(`${who} ${words}`)) return [];
    named.add(`${item.part ?? ''} ${words}`).add(` ${words}`);
    return [{ ...item, label: label('drawing.value.name', { value: words }) }];
  });
  return { ...drawn, key: [], items };
}

interface Reader {
  readonly kinds: ReadonlyMap<string, Part['kind']>;
  readonly document: DesignDocument;
  readonly say: Say;
}

function wordsFor({ part, label: { code, params } }: TextItem, { kinds, document, say }: Reader): string | null {
  const level = levels[code];
  if (level !== undefined) return say(level, params);
  const kind = kinds.get(part ?? '');
  const lets = code.startsWith('drawing.out.') ? code.slice(12) : code.startsWith('drawing.beside') && kind === 'outlet' ? waterOf(document.system.parts, part ?? '') : null;
  const name = lets === null ? `portal.name.${kind ?? ''}` : `portal.name.out.${lets}`;
  return (naming.has(code) || code.startsWith('drawing.out')) && isMessageCode(name) ? say(name) : null;
}
