import { groupA } from './a.ts';
import { groupB } from './b.ts';
import { groupC } from './c.ts';
import { groupD } from './groupD.ts';
import { groupE } from './e.ts';
import { groupF } from './f.ts';
import { groupG } from './g.ts';
import { groupH } from './h.ts';
import { groupI } from './i.ts';
import { groupJ } from './j.ts';
import type { ItemTemplate } from './types.ts';

/** Every item there is, in the order of the work. Ids are stable; gaps are items that were merged. */
export const itemTemplates: readonly ItemTemplate[] = [
  ...groupA, ...groupB, ...groupC, ...groupD, ...groupE, ...groupF, ...groupG, ...groupH, ...groupI, ...groupJ,
];

const byId = new Map(itemTemplates.map((template) => [template.id, template]));

export function itemTemplate(id: string): ItemTemplate {
  const template = byId.get(id);
  if (template === undefined) throw new RangeError(`there is no checklist item ${id}`);
  return template;
}
