import type { DesignDocument, Part } from '@yardfall/calc';
import type { DraftOperation } from '@yardfall/contracts';
import { isMessageCode, type QuantityKind } from '@yardfall/text';
import type { Text } from '../../../lib/reader.tsx';
import { fieldsOf } from './fields.ts';

/** The document, and before it whatever may hold what it has no longer. */
export type Documents = readonly [DesignDocument, ...DesignDocument[]];

/** Keys that only lead to a thing and are not said. */
const unsaid = new Set(['system', 'parts', 'site', 'plan', 'shapes', 'catchments', 'sills', 'spotLevels', 'lowSpots', 'candidateOutlets', '-']);

/** How a figure is written, by the field that holds it. */
const quantities: readonly (readonly [pattern: RegExp, quantity: QuantityKind])[] = [
  [/level$|^invert|invert$|^highPoint$|watertable$/i, 'level'], [/area$/i, 'area'], [/length$|^distance|^station$|^spillWidth$/i, 'length'], [/slope$/i, 'slope'],
  [/diameter$|width$|depth$|^surround$|^tolerance$|^coverMin$|^openSize$/i, 'height'],
];

/** The name of a thing in the document, or of what an earlier one held. */
export function nameOf([newest, ...earlier]: Documents, id: string): string {
  const { system, site } = newest;
  const lists = [system.parts, site.sills, site.lowSpots, site.catchments, site.spotLevels, site.candidateOutlets, site.utilities, site.plan?.shapes ?? []];
  const [before, ...rest] = earlier;
  return lists.flat().find((item) => item.id === id)?.name ?? (before === undefined ? id : nameOf([before, ...rest], id));
}

/** A field as a reader names it; of a part by the words of its form. */
export function fieldWords(path: readonly string[], { say }: Text, part: Part | null = null): string {
  const form = part === null ? undefined : fieldsOf(part.kind).find((field) => field.path.join('.') === path.join('.'));
  if (form !== undefined) return say(form.label);
  return path.map((key) => (isMessageCode(`designs.word.${key}`) ? say(`designs.word.${key}`) : key)).join(', ');
}

/** Where an edit changes the document, in words. */
export function placeWords(documents: Documents, path: readonly string[], text: Text): string {
  const at = path.findIndex((key) => key.startsWith('@'));
  const id = path[at]?.slice(1);
  if (id === undefined) return fieldWords(path.filter((key) => !unsaid.has(key)), text) || fieldWords(path.slice(-1), text);
  const field = fieldWords(path.slice(at + 1), text, documents.flatMap(({ system }) => system.parts).find((part) => part.id === id) ?? null);
  return field === '' ? nameOf(documents, id) : text.t('designs.compare.field', { name: nameOf(documents, id), field });
}

/** A value of the document in words: a figure with its unit where the field tells it, a list by how many it holds. */
export function valueWords(key: string, value: unknown, { t, q }: Text): string {
  if (value === null || value === undefined) return t('designs.nothing');
  if (key === 'stageArea') return surfaceWords(value as readonly StageArea[], t);
  if (Array.isArray(value)) return t('designs.several', { count: value.length });
  if (typeof value === 'object') return 'name' in value && typeof value.name === 'string' ? value.name : t('designs.otherwise');
  const quantity = typeof value === 'number' ? quantities.find(([pattern]) => pattern.test(key))?.[1] : undefined;
  if (typeof value === 'number') return quantity === undefined ? q('number', value) : q(quantity, value);
  if (typeof value === 'boolean') return t(value ? 'ui.yes' : 'ui.no');
  return typeof value === 'string' ? value : JSON.stringify(value);
}

type StageArea = DesignDocument['site']['lowSpots'][number]['stageArea'][number];

function surfaceWords(stages: readonly StageArea[], t: Text['t']): string {
  const top = stages.at(-1);
  return top === undefined ? t('designs.nothing') : t('designs.waterSurface', { count: stages.length, area: top.area, level: top.level });
}

/** One edit as a sentence. */
export function editWords(operation: DraftOperation, documents: Documents, text: Text): string {
  const { t } = text;
  if (operation.kind === 'connect') return t('designs.edits.connected', { place: nameOf(documents, operation.part), value: operation.drainsTo === null ? t('designs.nothing') : nameOf(documents, operation.drainsTo) });
  const place = placeWords(documents, operation.path, text);
  if (operation.kind === 'remove') return t('designs.edits.removed', { place });
  const value = valueWords(operation.path.at(-1) ?? '', operation.value, text);
  return operation.kind === 'add' ? t('designs.edits.added', { place: value }) : t('designs.edits.replaced', { place, value });
}
