import type { Requirement } from '../checklists.ts';
import { hasTrait, type Trait } from './traits.ts';
import type { ItemGroup, Subject } from './types.ts';

/** The first wording whose traits the design has; null when none fits. */
export function firstOf(choices: Readonly<Record<string, readonly Trait[]>>) {
  return ({ document }: Subject): string | null => Object.entries(choices).find(([, traits]) => traits.every((trait) => hasTrait(document, trait)))?.[0] ?? null;
}

export type ItemSentence = 'what' | 'acceptance' | 'photo' | 'whyCrew' | 'whyHome';

/** Whether a step was thought up by the company; its words are in its parameters. */
export const isOwn = (template: string): boolean => template.includes('.');

/** Code of one of the item's sentences: the company's own words, the wording that was chosen for the design, `checklists.J4Grate.what`, or the one for all, `checklists.J4.what`. */
export function itemText({ template, params }: Pick<Requirement, 'template' | 'params'>, sentence: ItemSentence): string {
  const own = params[`own${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}`];
  if (typeof own === 'string' && own !== '') return `checklists.own.${sentence}`;
  return isOwn(template) ? `checklists.own.no.${sentence}` : `checklists.${template}${typeof params.wording === 'string' ? params.wording : ''}.${sentence}`;
}

const fewer: Readonly<Partial<Record<ItemGroup, readonly (readonly [items: readonly string[], name: string])[]>>> = {
  C: [[['C1', 'C2'], 'C']],
  D: [[['D1', 'D2'], 'D'], [['D6'], 'D.inlets']],
  G: [[['G1', 'G3'], 'G']],
  I: [[['I1', 'I3'], 'I']],
};
const without: Readonly<Partial<Record<ItemGroup, string>>> = { C: 'C.dig', D: 'D.roof', G: 'G.outlet', I: 'I.ground' };

/** Code of a group's heading, named by the items that this job has in it. */
export function groupText(group: ItemGroup, templates: readonly string[]): string {
  const named = fewer[group]?.find(([items]) => items.some((id) => templates.includes(id)))?.[1];
  return `checklists.group.${named ?? without[group] ?? group}`;
}
