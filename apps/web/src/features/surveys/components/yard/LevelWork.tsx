import type { ListedPoint } from '@yardfall/calc';
import { useState } from 'react';
import { Button } from '../../../../components/Button.tsx';
import { PointListPick } from '../../../../components/PointListPick.tsx';
import { useText } from '../../../../lib/reader.tsx';
import { keep, kept } from '../../../../lib/keep.ts';
import type { YardBook } from '../../api/useYardBook.ts';
import { standingOf } from '../../model/fieldBook.ts';
import { entryUnits, type EntryUnit } from '../../model/keypad.ts';
import { bookOfList } from '../../model/listBook.ts';
import { BeginBook } from './BeginBook.tsx';
import { BookTable } from './BookTable.tsx';
import { LoopNotice } from './LoopNotice.tsx';
import { NextCard } from './NextCard.tsx';
import { RunningBook } from './RunningBook.tsx';
import { EveryOutlet, VerdictLine } from './VerdictLine.tsx';

/** A list has no rod; the longest that a book may read [m]. */
const longestLaser = 7.62;

/** The level book: by thumb on a phone, as a table with typed lines at a desk. */
export function LevelWork({ jobId, yard, desk }: { readonly jobId: string; readonly yard: YardBook; readonly desk: boolean }) {
  const { t, units } = useText();
  const [unit, setUnit] = useState<EntryUnit>(() => entryUnits.find((one) => one === kept('rodUnit')) ?? (units === 'us' ? 'foot' : 'metre'));
  const [changing, setChanging] = useState(false);
  const [last, setLast] = useState<string | null>(null);
  const { book } = yard;
  if (book === null || changing) {
    return (
      <div className="stack">
        <BeginBook head={book} onBegin={(head) => { yard.begin(head); setChanging(false); }} />
        {desk && book === null ? <FromList yard={yard} /> : null}
      </div>
    );
  }
  const standing = standingOf(book);
  const choose = (now: EntryUnit) => {
    setUnit(now);
    keep('rodUnit', now);
  };
  const take = (shot: Parameters<YardBook['keepShot']>[0]) => {
    yard.keepShot(shot);
    setLast(shot.point);
  };
  return (
    <div className="stack level-work">
      <VerdictLine book={book} standing={standing} />
      <p className="unseen" role="status">{last === null ? '' : t('surveys.yard.kept', { point: last })}</p>
      <LoopNotice book={book} standing={standing} unit={unit} />
      {desk
        ? <BookTable book={book} standing={standing} onKeep={take} onStrike={yard.strike} />
        : <NextCard book={book} standing={standing} unit={unit} onUnit={choose} onKeep={take} />}
      <EveryOutlet standing={standing} />
      {desk ? null : <RunningBook jobId={jobId} book={book} standing={standing} yard={yard} />}
      <div className="row">
        <Button kind="text" size="crew" onClick={() => setChanging(true)}>{t('surveys.yard.change')}</Button>
        <Button kind="text" size="crew" onClick={() => yard.openVisit(null)}>{t('surveys.yard.newVisit')}</Button>
      </div>
    </div>
  );
}

/** At a desk a surveyor's list is a book at once, read directly over its floor. */
function FromList({ yard }: { readonly yard: YardBook }) {
  const { t } = useText();
  const take = (points: readonly ListedPoint[]) => {
    const list = bookOfList(points);
    if (list !== null) yard.beginFromList({ mode: 'direct', benchMark: list.benchMark, rod: longestLaser }, list.shots);
  };
  return <PointListPick note={t('surveys.yard.listNote')} words={t('surveys.yard.listTake')} onTake={take} />;
}
