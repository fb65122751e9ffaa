import { readingQuestions } from '@yardfall/calc';
import { useState } from 'react';
import { v7 as uuidv7 } from 'uuid';
import { Button } from '../../../../components/Button.tsx';
import { TextField } from '../../../../components/Field.tsx';
import { LengthField } from '../../../../components/LengthField.tsx';
import { Notice } from '../../../../components/Notice.tsx';
import { useText } from '../../../../lib/reader.tsx';
import { levelBookOf, readingOf, type BookStanding, type FieldBook, type PointRole } from '../../model/fieldBook.ts';
import { emptyEntry, metresOf, switched, type Entry, type EntryUnit } from '../../model/keypad.ts';
import type { NewShot } from '../../model/yardFacts.ts';
import { freeName, nextShot, otherShot, type NextShot } from '../../model/nextShot.ts';
import { ElseDialog } from './ElseDialog.tsx';
import { KeyDisplay } from './KeyDisplay.tsx';
import { Keypad } from './Keypad.tsx';

interface NextCardProps {
  readonly book: FieldBook;
  readonly standing: BookStanding;
  readonly unit: EntryUnit;
  readonly onUnit: (unit: EntryUnit) => void;
  readonly onKeep: (shot: NewShot) => void;
}

interface Draft {
  /** What was chosen instead of the next shot; null follows the book. */
  readonly other: PointRole | 'turn' | 'close' | null;
  readonly name: string | null;
  readonly tailwater: number | null;
}

const freshDraft: Draft = { other: null, name: null, tailwater: null };

/** One shot at a time: what the rod is on, the keys, and what the reading would mean before it is kept. */
export function NextCard({ book, standing, unit, onUnit, onKeep }: NextCardProps) {
  const { t } = useText();
  const [draft, setDraft] = useState(freshDraft);
  const [entry, setEntry] = useState<Entry>(() => emptyEntry(unit));
  const [pipe, setPipe] = useState<Entry>(() => emptyEntry(unit, true));
  const [field, setField] = useState<'reading' | 'pipe'>('reading');
  const [choosing, setChoosing] = useState(false);
  const next = draft.other === null ? nextShot(book) : otherShot(book, draft.other);
  const hasPipe = next?.role === 'outlet' && next.point === null;
  const writing = hasPipe ? field : 'reading';
  const write = (now: Entry) => {
    if (writing === 'pipe') setPipe(now);
    else setEntry(now);
    if (now.unit === unit) return;
    onUnit(now.unit);
    (writing === 'pipe' ? setEntry : setPipe)((other) => switched(other, now.unit));
  };
  const chooser = <ElseDialog open={choosing} book={book} onClose={() => setChoosing(false)} onChoose={(other) => { setDraft({ ...freshDraft, other }); setChoosing(false); }} />;
  if (next === null) {
    return (
      <div className="stack">
        <Button size="crew" wide onClick={() => setChoosing(true)}>{t('surveys.yard.again')}</Button>
        {chooser}
      </div>
    );
  }
  const word = t(next.why === 'turn' ? 'surveys.yard.point.turn' : `surveys.yard.point.${next.role}`);
  const point = next.point ?? (draft.name?.trim() || freeName(book, word));
  const value = metresOf(entry);
  const shot = { id: uuidv7(), kind: next.kind, point, role: next.role, value: value ?? 0, distance: hasPipe ? metresOf(pipe) : null, tailwater: draft.tailwater };
  const questions = value === null ? [] : readingQuestions(levelBookOf(book), readingOf(shot), book.rod);
  const impossible = questions.some((question) => question.impossible);
  const keep = () => {
    if (value === null || impossible) return;
    onKeep(shot);
    setEntry(emptyEntry(unit));
    setPipe(emptyEntry(unit, true));
    setField('reading');
    setDraft(freshDraft);
  };
  return (
    <section className="next-card" aria-label={t('surveys.yard.next')}>
      <div className="next-head">
        <p className="next-what">{sentence(t, next, point, book.mode)}</p>
        <Button kind="text" size="crew" onClick={() => setChoosing(true)}>{t('surveys.yard.else')}</Button>
      </div>
      {next.point === null ? <p className="faint next-hint">{t(next.why === 'turn' ? 'surveys.yard.do.turn' : `surveys.yard.hint.${next.role}`)}</p> : null}
      <KeyDisplay label={t('surveys.yard.reading')} entry={entry} note={value === null ? '' : gives(t, value, book, standing, next)} placeholder={t('surveys.yard.empty')}
        writing={hasPipe && writing === 'reading'} onWrite={() => setField('reading')} onEntry={write} onEnter={keep} />
      {hasPipe ? (
        <KeyDisplay label={t('surveys.yard.pipe')} entry={pipe} note={t('surveys.yard.pipe')} placeholder={t('surveys.yard.pipeEmpty')} writing={writing === 'pipe'} onWrite={() => setField('pipe')} onEntry={write} onEnter={() => setField('reading')} />
      ) : null}
      {questions.map((question) => <Notice key={question.code} severity={question.impossible ? 'stop' : 'caution'}><p>{t(question.code, question.params)}</p></Notice>)}
      <Keypad label={t(writing === 'pipe' ? 'surveys.yard.pipe' : 'surveys.yard.keys')} entry={writing === 'pipe' ? pipe : entry} onEntry={write} signed={writing === 'reading' && book.mode === 'direct'} />
      <Button kind="main" size="crew" wide disabled={value === null || impossible} onClick={keep}>{t(questions.length > 0 && !impossible ? 'surveys.yard.keepAnyway' : 'surveys.yard.keep')}</Button>
      {next.point === null ? (
        <details className="yard-details">
          <summary>{t('surveys.yard.details')}</summary>
          <div className="stack crew-form">
            <TextField label={t('surveys.yard.name')} value={draft.name ?? ''} placeholder={point} maxLength={80} onChange={(event) => setDraft({ ...draft, name: event.target.value })} />
            {next.role === 'outlet' ? <LengthField label={t('surveys.yard.water')} kind="height" optional value={draft.tailwater} onChange={(tailwater) => setDraft({ ...draft, tailwater })} /> : null}
          </div>
        </details>
      ) : null}
      {chooser}
    </section>
  );
}

function sentence(t: ReturnType<typeof useText>['t'], { why }: NextShot, point: string, mode: FieldBook['mode']): string {
  if (why === 'turn') return t('surveys.yard.do.needed', { point });
  if (why === 'start' && mode === 'direct') return t('surveys.yard.do.startDirect', { point });
  return t(`surveys.yard.do.${why}`, { point });
}

/** The level that follows from a reading. */
function gives(t: ReturnType<typeof useText>['t'], value: number, book: FieldBook, { instrument, levels }: BookStanding, next: NextShot): string {
  if (book.mode === 'direct') return t('surveys.yard.gives', { level: book.benchMark.level + value });
  if (next.kind === 'backsight') {
    const level = next.point === book.benchMark.name ? book.benchMark.level : levels.get(next.point ?? '');
    return level === undefined ? '' : t('surveys.yard.givesInstrument', { level: level + value });
  }
  return instrument === null ? '' : t('surveys.yard.gives', { level: instrument - value });
}
