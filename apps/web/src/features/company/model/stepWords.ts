import { itemTemplates, itemText, type WantedChange } from '@yardfall/contracts';
import type { Text } from '../../../lib/reader.tsx';

export function builtInName(id: string, { say }: Pick<Text, 'say'>): string {
  const params = itemTemplates.find((template) => template.id === id)?.params ?? {};
  return say(itemText({ template: id, params: { ...params } }, 'what'), params);
}

/** What is different at a step, in words. */
export function changeWords({ item, leftOut, what, adds, photos, limits, cure = null, figures = null }: WantedChange, { t }: Pick<Text, 't'>): string {
  if (leftOut) return t('steps.leftOut');
  const usual = itemTemplates.find((template) => template.id === item)?.minPhotos ?? 0;
  return [
    ...(what === '' ? [] : [t('steps.called', { what })]), ...(photos === null ? [] : [t('steps.photos', { n: photos, usual })]), ...(limits === undefined || limits === null ? [] : [t('steps.limits', { limits })]), ...(figures === null ? [] : [t('steps.figures.own', { n: figures.length })]), ...(cure === null ? [] : [t('steps.cement.is', cure)]), ...(adds === '' ? [] : [t('steps.adds', { adds })]),
  ].join(', ');
}

/** A name for a step of the company's own that is not taken yet: its stage and a number. */
export function freeId(group: string, taken: readonly string[]): string {
  for (let n = 1; ; n += 1) if (!taken.includes(`${group}.own${String(n)}`)) return `${group}.own${String(n)}`;
}
