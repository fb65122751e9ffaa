import type { FieldFact } from '../checklists.ts';
import type { JudgedFact } from './causality.ts';
import { buildChecklist, type BuiltItem } from './build.ts';
import { foldItem } from './fold.ts';
import type { ItemInState } from './holdPoints.ts';
import { site } from './sites.test-d.ts';
import { itemTemplates } from './templates.ts';

type Body = { readonly kind: FieldFact['kind'] } & Readonly<Record<string, unknown>>;

/** Tern Hollow has an old drain, a pump, a slab and trenches; it stands in the zone of New York. */
export const tern: readonly BuiltItem[] = await buildChecklist(site('tern-hollow'), itemTemplates, [], { timeZone: 'America/New_York', cancelUntil: '2026-03-05T00:00:00-05:00' });

let made = 0;
/** A fact of this moment; the photo was taken then. */
export function fact(at: string, body: Body): JudgedFact {
  made += 1;
  const id = `00000000-0000-7000-8000-${String(made).padStart(12, '0')}`;
  const photo = body.kind === 'photo' ? { photoId: id, takenAt: at } : {};
  return { verdict: 'kept', fact: { id, deviceId: id, seq: made, deviceTime: at, factVersion: 1, revisionId: id, itemKey: 'x', requirementHash: '', seen: [], ...photo, ...body } as FieldFact };
}

export function stepOf(template: string): BuiltItem {
  const item = tern.find((one) => one.template === template);
  if (item === undefined) throw new Error(`no ${template}`);
  return item;
}

/** The whole list, every step in this state but those that have facts. */
export function statesWith(facts: Readonly<Record<string, readonly JudgedFact[]>>, others: ItemInState['state'] = 'open'): ItemInState[] {
  return tern.map(({ key, template, part, holdPoint, requirement }) => {
    const own = facts[template];
    if (own === undefined) return { key, template, part, holdPoint, state: others, freshUntil: null, readyAt: null };
    const { state, freshUntil, readyAt } = foldItem(requirement, own);
    return { key, template, part, holdPoint, state, freshUntil, readyAt };
  });
}
