import type { DesignDocument, Part } from '@yardfall/calc';
import type { DraftOperation } from '@yardfall/contracts';
import { isMessageCode, type QuantityKind } from '@yardfall/text';
import type { Text } from '../../../lib/reader.tsx';
import { fieldsOf } from './fields.ts';

/** Keys that only lead to a thing and are not said. */
const unsaid = new Set(['system', 'parts', 'site', 'plan', 'shapes', 'catchments', 'sills', 'spotLevels', 'lowSpots', 'candidateOutlets', '-']);

/** How a figure is written, by the field that holds it. */
const quantities: readonly (readonly [pattern: RegExp, quantity: QuantityKind])[] = [
  [/level$|^invert|invert$|^highPoint$|watertable$/i, 'level'], [/area$/i, 'area'], [/length$|^distance|^station$|^spillWidth$/i, 'length'], [/slope$/i, 'slope'],
  [/diameter$|^width$|^depth$|^surround$|^tolerance$|^coverMin$/i, 'height'],
];

export function nameOf({ system, site }: DesignDocument, id: string): string {
  const lists = [system.parts, site.sills, site.lowSpots, site.catchments, site.spotLevels, site.candidateOutlets, site.utilities, site.plan?.shapes ?? []];
  return lists.flat().find((item) => item.id === id)?.name ?? id;
}

/** A field as a reader names it; of a part by the words of its form. */
export function fieldWords(path: readonly string[], { say }: Text, part: Part | null = null): string {
  const form = part === null ? undefined : fieldsOf(part.kind).find((field) => field.path.join('.') === path.join('.'));
  if (form !== undefined) return say(form.label);
  return path.map((key) => (isMessageCode(`designs.word.${key}`) ? say(`designs.word.${key}`) : key)).join(', ');
}

/** Where an edit changes the document, in words. */
export function placeWords(document: DesignDocument, path: readonly string[], text: Text): string {
  const at = path.findIndex((key) => key.startsWith('@'));
  const id = path[at]?.slice(1);
  if (id === undefined) return fieldWords(path.filter((key) => !unsaid.has(key)), text) || fieldWords(path.slice(-1), text);
  const field = fieldWords(path.slice(at + 1), text, document.system.parts.find((part) => part.id === id) ?? null);
  return field === '' ? nameOf(document, id) : text.t('designs.compare.field', { name: nameOf(document, id), field });
}

/** A value of the document in words: a figure with its unit where the field tells it, a list by how many it holds. */
export function valueWords(key: string, value: unknown, { t, q }: Text): string {
  if (value === null || value === undefined) return t('designs.nothing');
  if (Array.isArray(value)) return t('designs.several', { count: value.length });
  if (typeof value === 'object') return 'name' in value && typeof value.name === 'string' ? value.name : t('designs.otherwise');
  const quantity = typeof value === 'number' ? quantities.find(([pattern]) => pattern.test(key))?.[1] : undefined;
  if (typeof value === 'number') return quantity === undefined ? q('number', value) : q(quantity, value);
  if (typeof value === 'boolean') return t(value ? 'ui.yes' : 'ui.no');
  return typeof value === 'string' ? value : JSON.stringify(value);
}

/** One edit as a sentence. */
export function editWords(operation: DraftOperation, document: DesignDocument, text: Text): string {
  const { t } = text;
  if (operation.kind === 'connect') return t('designs.edits.connected', { place: nameOf(document, operation.part), value: operation.drainsTo === null ? t('designs.nothing') : nameOf(document, operation.drainsTo) });
  const place = placeWords(document, operation.path, text);
  if (operation.kind === 'remove') return t('designs.edits.removed', { place });
  const value = valueWords(operation.path.at(-1) ?? '', operation.value, text);
  return operation.kind === 'add' ? t('designs.edits.added', { place: value }) : t('designs.edits.replaced', { place, value });
}
