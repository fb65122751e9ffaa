import { isAlike } from '@yardfall/contracts';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { Saved } from '../../../components/Saved.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useItemRecord } from '../api/useItemRecord.ts';
import { useNext } from '../api/useNext.ts';
import { standingOf } from '../model/standing.ts';
import { companionsOf } from '../model/companions.ts';
import { isSettled, lookedAtToday, type ChecklistView, type ItemView } from '../model/view.ts';
import { Companion } from './Companion.tsx';
import { Disputed } from './Disputed.tsx';
import { Evidence } from './Evidence.tsx';
import { Held } from './Held.tsx';
import { ItemCautions } from './ItemCautions.tsx';
import { PrivateLineCaution } from './PrivateLineCaution.tsx';
import { ItemMark } from './ItemMark.tsx';
import { NextControl } from './NextControl.tsx';
import { OtherWays } from './OtherWays.tsx';
import { Lifted } from './Lifted.tsx';
import { RainTold } from './RainTold.tsx';
import { Record } from './Record.tsx';
import { Slip } from './Slip.tsx';
import { StandingWords, stopWords } from './Standing.tsx';
import { StartWork } from './StartWork.tsx';
import { WhatGood, Whys } from './WhatGood.tsx';
import { WhyFailed } from './WhyFailed.tsx';

interface ItemScreenProps {
  readonly list: ChecklistView;
  readonly view: ItemView;
  readonly onOpen: (key: string | null) => void;
}

export function ItemScreen({ list, view, onOpen }: ItemScreenProps) {
  const { t, say } = useText();
  const record = useItemRecord(list, view);
  const held = view.heldBy.length > 0 && !isSettled(view);
  const starts = view.asksBegin && !view.begun && !isSettled(view);
  const companions = held || starts ? [] : companionsOf(list, view);
  const next = useNext(list)?.item.key ?? null;
  const last = view.item.facts.at(-1);
  return (
    <div className="stack item-screen" data-item={view.item.key}>
      <p className="hold-state">
        <ItemMark standing={standingOf(view, next)} />
        <span><StandingWords view={view} next={next} /></span>
        {view.item.partName === null ? null : <span className="faint">{t('checklists.ofPart', { part: view.item.partName })}</span>}
      </p>
      {view.stops.length > 0 && !isSettled(view) ? <Notice severity="stop" title={t('checklists.stopped', { kinds: stopWords(say, view) })}><p>{t('checklists.stoppedUntil')}</p></Notice> : null}
      <WhyFailed view={view} />
      <ItemCautions template={view.item.template} />
      <PrivateLineCaution list={list} template={view.item.template} />
      <WhatGood item={view.item} />
      <Disputed list={list} view={view} record={record} />
      {held ? <Held list={list} view={view} onOpen={onOpen} /> : null}
      {held || starts ? <StartWork list={list} view={view} record={record} /> : <Evidence list={list} view={view} record={record} companions={companions} />}
      <KeepProblem problem={record.problem} />
      {view.waiting.length > 0 ? <Saved state="device" /> : last ? <Saved state="office" at={last.serverTime} /> : null}
      <Slip list={list} view={view} record={record} />
      <Lifted list={list} view={view} record={record} />
      {lookedAtToday([view]) === null ? null : <RainTold list={list} view={view} />}
      {companions.length > 0 ? <p className="notice-title">{t(companions.every((one) => isAlike(view.item, one.item)) ? 'checklists.sameElsewhere' : 'checklists.seenTogether')}</p> : null}
      {companions.map((one) => <Companion key={one.item.key} list={list} view={one} alike={isAlike(view.item, one.item)} />)}
      <NextControl view={list} except={view.item.key} main={isSettled(view)} onOpen={onOpen} />
      <OtherWays list={list} view={view} record={record} held={held} />
      <Whys item={view.item} />
      <Record view={view} />
    </div>
  );
}
