import { itemText } from '@yardfall/contracts';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useItemRecord } from '../api/useItemRecord.ts';
import type { ChecklistView, ItemView } from '../model/view.ts';
import { Evidence } from './Evidence.tsx';
import { ItemCautions } from './ItemCautions.tsx';
import { WhatGood, Whys } from './WhatGood.tsx';

interface CompanionProps {
  readonly list: ChecklistView;
  readonly view: ItemView;
  /** The same step at another pipe: what is told of it stands above already. */
  readonly alike: boolean;
}

/** A step that is seen in the same picture, or is the same at another pipe, asked on the same screen. */
export function Companion({ list, view, alike }: CompanionProps) {
  const { t, say } = useText();
  const record = useItemRecord(list, view);
  const { requirement, partName, template } = view.item;
  return (
    <section className="together" data-item={view.item.key}>
      {alike && partName !== null ? <h3>{partName}</h3> : <h3>{say(itemText(requirement, 'what'), requirement.params)}{partName === null ? null : <span className="faint"> {t('checklists.ofPart', { part: partName })}</span>}</h3>}
      {alike ? null : <ItemCautions template={template} />}
      {alike && view.item.reopenedReason === null ? null : <WhatGood item={view.item} />}
      <Evidence list={list} view={view} record={record} />
      <KeepProblem problem={record.problem} />
      {alike ? null : <Whys item={view.item} />}
    </section>
  );
}
