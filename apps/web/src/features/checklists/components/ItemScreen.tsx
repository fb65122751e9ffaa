import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { Saved } from '../../../components/Saved.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useItemRecord } from '../api/useItemRecord.ts';
import { isSettled, type ChecklistView, type ItemView } from '../model/view.ts';
import { Evidence } from './Evidence.tsx';
import { Held } from './Held.tsx';
import { ItemMark } from './ItemMark.tsx';
import { standingOf } from './ItemRow.tsx';
import { NextControl } from './NextControl.tsx';
import { OtherWays } from './OtherWays.tsx';
import { Record } from './Record.tsx';
import { StartWork } from './StartWork.tsx';
import { WhatGood } from './WhatGood.tsx';

interface ItemScreenProps {
  readonly list: ChecklistView;
  readonly view: ItemView;
  readonly onOpen: (key: string | null) => void;
}

export function ItemScreen({ list, view, onOpen }: ItemScreenProps) {
  const { t } = useText();
  const record = useItemRecord(list.jobId, list.revisionId, view);
  const held = view.heldBy.length > 0 && !isSettled(view);
  const starts = view.asksBegin && !view.begun && !isSettled(view);
  const standing = standingOf(view);
  const last = view.item.facts.at(-1);
  return (
    <div className="stack item-screen">
      <p className="hold-state">
        <ItemMark standing={standing} />
        {standing === 'held' ? t('checklists.held', { holdPoint: view.heldBy.map(({ holdPoint }) => holdPoint).join(', ') }) : t(`checklists.state.${standing}`)}
        {view.item.partName === null ? null : <span className="faint">{t('checklists.ofPart', { part: view.item.partName })}</span>}
      </p>
      <WhatGood item={view.item} />
      {held ? <Held list={list} view={view} onOpen={onOpen} /> : null}
      {held || starts ? <StartWork list={list} view={view} record={record} /> : <Evidence list={list} view={view} record={record} />}
      <KeepProblem problem={record.problem} />
      {view.waiting.length > 0 ? <Saved state="device" /> : last ? <Saved state="office" at={last.serverTime} /> : null}
      <OtherWays list={list} view={view} record={record} held={held} />
      <Record view={view} />
      <NextControl view={list} except={view.item.key} onOpen={onOpen} />
    </div>
  );
}
