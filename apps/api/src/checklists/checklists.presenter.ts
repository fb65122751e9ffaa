import type { DesignDocument } from '@yardfall/calc';
import { type Checklist, type ChecklistItem, heldBy, holdPointsNow, groupOf, type ItemInState, type Moment } from '@yardfall/contracts';
import type { LiveChecklist, LiveItem } from './live.ts';

export interface Shown {
  readonly jobId: string;
  readonly revisionId: string;
  readonly document: DesignDocument;
}

export function presentChecklist(live: LiveChecklist, { jobId, revisionId, document }: Shown, moment: Moment): Checklist {
  const states = live.states();
  const names = partNames(document);
  return {
    jobId, revisionId,
    items: [...live.items.values()].map((item) => presentItem(live, item, states, names, moment)),
    digging: live.digging(),
    holdPoints: holdPointsNow(states, moment).map(({ id, part, open, waived, items, guards }) => ({ id, part, open, waived, items: [...items], guards: [...guards] })),
  };
}

export function presentItem(live: LiveChecklist, item: LiveItem, states: readonly ItemInState[], names: ReadonlyMap<string, string>, moment: Moment): ChecklistItem {
  const { row, requirement, facts } = item;
  const now = moment.now ?? moment.at;
  const { state, missing } = now === null ? live.fold(item) : live.foldAt(item, now);
  return {
    key: row.key, template: row.template, group: groupOf(row.template), part: row.part, partName: row.part === null ? null : (names.get(row.part) ?? row.part), position: row.position,
    holdPoint: row.holdPoint, requirement, requirementHash: row.requirementHash, state, missing: [...missing], reopenedReason: row.reopenedReason, facts,
    heldBy: heldBy(states, row.key, live.momentFor(row.key, moment)).map(({ holdPoint, items }) => ({ holdPoint, items: [...items] })),
  };
}

export function partNames(document: DesignDocument): ReadonlyMap<string, string> {
  return new Map(document.system.parts.map(({ id, name }) => [id, name]));
}

