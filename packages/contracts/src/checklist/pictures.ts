import { itemTemplate } from './templates.ts';

/** Items that are seen in one picture, at one place and in one stage of the work: they are asked together, and one photo may prove each of them. Ours. */
const pictures: readonly (readonly string[])[] = [
  ['A2', 'A4'], ['A3', 'B3'], ['C5', 'C7'], ['D4', 'I1'], ['E2', 'E3'], ['E6', 'G7'], ['F1', 'F2'], ['F5', 'F6'], ['F7', 'F8'], ['J4', 'J5'],
];

/** Steps that are the same at every pipe, though a hold point stands for each: they are asked on one screen, each with its own picture and figures. The shots of a pipe are not among them: each has a drawing of its own. Ours. */
const alike = new Set(['E5', 'E6']);

interface Item {
  readonly key: string;
  readonly template: string;
  readonly part: string | null;
}

/** Whether a photo that was taken for one item may show the other as well. Two items of one kind of part are seen together only at the same part. */
export function seenTogether(a: Item, b: Item): boolean {
  if (a.key === b.key) return true;
  if (a.template === b.template || !pictures.some((picture) => picture.includes(a.template) && picture.includes(b.template))) return false;
  return a.part === b.part || !standForSameParts(a.template, b.template);
}

/** Whether two steps are asked on one screen: one picture shows both, or they are the same at two pipes. */
export function askedTogether(a: Item, b: Item): boolean {
  return seenTogether(a, b) || isAlike(a, b);
}

/** The same at another part. */
export function isAlike(a: Item, b: Item): boolean {
  return a.template === b.template && a.part !== b.part && alike.has(a.template);
}

function standForSameParts(a: string, b: string): boolean {
  const [one, other] = [itemTemplate(a).per, itemTemplate(b).per];
  if (typeof one === 'object' && typeof other === 'object') return one.kinds.some((kind) => other.kinds.includes(kind));
  return one !== 'job' && one === other;
}
