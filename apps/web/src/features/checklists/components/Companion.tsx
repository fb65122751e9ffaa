import { itemText } from '@yardfall/contracts';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useItemRecord } from '../api/useItemRecord.ts';
import type { ChecklistView, ItemView } from '../model/view.ts';
import { Evidence } from './Evidence.tsx';
import { ItemCautions } from './ItemCautions.tsx';
import { WhatGood, Whys } from './WhatGood.tsx';

/** A step that is seen in the same picture, asked on the same screen. */
export function Companion({ list, view }: { readonly list: ChecklistView; readonly view: ItemView }) {
  const { t, say } = useText();
  const record = useItemRecord(list, view);
  return (
    <section className="together" data-item={view.item.key}>
      <h3>{say(itemText(view.item.requirement, 'what'), view.item.requirement.params)}{view.item.partName === null ? null : <span className="faint"> {t('checklists.ofPart', { part: view.item.partName })}</span>}</h3>
      <ItemCautions template={view.item.template} />
      <WhatGood item={view.item} />
      <Evidence list={list} view={view} record={record} />
      <KeepProblem problem={record.problem} />
      <Whys item={view.item} />
    </section>
  );
}
