import { readingQuestions } from '@yardfall/calc';
import { useState, type FormEvent } from 'react';
import { v7 as uuidv7 } from 'uuid';
import { Button } from '../../../../components/Button.tsx';
import { TextField } from '../../../../components/Field.tsx';
import { LengthField } from '../../../../components/LengthField.tsx';
import { Notice } from '../../../../components/Notice.tsx';
import { Select } from '../../../../components/Select.tsx';
import { Table } from '../../../../components/Table.tsx';
import { useText } from '../../../../lib/reader.tsx';
import { pointRoles } from '@yardfall/contracts';
import { levelBookOf, readingOf, type BookStanding, type FieldBook, type PointRole, type ShotKind } from '../../model/fieldBook.ts';
import { freeName, nextShot } from '../../model/nextShot.ts';
import type { NewShot } from '../../model/yardFacts.ts';

interface BookTableProps {
  readonly book: FieldBook;
  readonly standing: BookStanding;
  readonly onKeep: (shot: NewShot) => void;
  readonly onStrike: (entry: string, struck: boolean) => void;
}

/** At a desk: the whole book at once, and the next line typed. */
export function BookTable({ book, standing, onKeep, onStrike }: BookTableProps) {
  const { t, q } = useText();
  return (
    <div className="stack">
      <Table caption={t('surveys.yard.table')}
        columns={[
          { key: 'point', head: t('surveys.point') }, { key: 'role', head: t('surveys.role') }, { key: 'back', head: t('surveys.backsight'), figure: true }, { key: 'rod', head: t(book.mode === 'direct' ? 'surveys.direct' : 'surveys.intermediate'), figure: true },
          { key: 'fore', head: t('surveys.foresight'), figure: true }, { key: 'level', head: t('surveys.level'), figure: true }, { key: 'where', head: t('surveys.yard.where') }, { key: 'strike', head: <span className="unseen">{t('surveys.yard.strike')}</span> },
        ].filter(({ key }) => book.mode === 'heightOfInstrument' || (key !== 'back' && key !== 'fore'))}
        rows={book.shots.map((shot) => {
          const level = standing.levelOf(shot.id);
          const figure = shot.struck ? <s>{q('level', shot.value)}</s> : q('level', shot.value);
          return {
            key: shot.id,
            cells: {
              point: shot.point, role: t(`surveys.role.${shot.role}`), back: shot.kind === 'backsight' ? figure : '', rod: shot.kind === 'intermediate' || shot.kind === 'direct' ? figure : '', fore: shot.kind === 'foresight' ? figure : '',
              level: level === null || shot.struck ? '' : q('levelAndTape', level), where: t(shot.inOffice ? 'surveys.yard.inOffice' : 'surveys.yard.onPhone'),
              strike: <Button kind="text" aria-label={`${t(shot.struck ? 'surveys.yard.unstrike' : 'surveys.yard.strike')}: ${shot.point}`} onClick={() => onStrike(shot.entry, !shot.struck)}>{t(shot.struck ? 'surveys.yard.unstrike' : 'surveys.yard.strike')}</Button>,
            },
          };
        })} />
      <TypedLine key={book.shots.length} book={book} onKeep={onKeep} />
    </div>
  );
}

const kinds: readonly ShotKind[] = ['backsight', 'intermediate', 'foresight'];

function TypedLine({ book, onKeep }: Pick<BookTableProps, 'book' | 'onKeep'>) {
  const { t } = useText();
  const next = nextShot(book);
  const [kind, setKind] = useState<ShotKind>(next?.kind ?? (book.mode === 'direct' ? 'direct' : 'backsight'));
  const [role, setRole] = useState<PointRole>(next?.role ?? 'other');
  const [name, setName] = useState(next?.point ?? '');
  const [value, setValue] = useState<number | null>(null);
  const [distance, setDistance] = useState<number | null>(null);
  const [tailwater, setTailwater] = useState<number | null>(null);
  const point = name.trim() || freeName(book, t(`surveys.yard.point.${role}`));
  const shot = { id: uuidv7(), kind, point, role, value: value ?? 0, distance: role === 'outlet' ? distance : null, tailwater: role === 'outlet' ? tailwater : null };
  const questions = value === null ? [] : readingQuestions(levelBookOf(book), readingOf(shot), book.rod);
  const impossible = questions.some((question) => question.impossible);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (value !== null && !impossible) onKeep(shot);
  };
  return (
    <form className="stack" onSubmit={submit} aria-label={t('surveys.yard.typed')}>
      <div className="typed-line">
        {book.mode === 'direct' ? null : <Select label={t('surveys.yard.sight')} value={kind} choices={kinds.map((one) => ({ value: one, label: t(`surveys.${one as 'backsight' | 'intermediate' | 'foresight'}`) }))} onChange={setKind} />}
        <Select label={t('surveys.role')} value={role} choices={pointRoles.map((one) => ({ value: one, label: t(`surveys.role.${one}`) }))} onChange={setRole} />
        <TextField label={t('surveys.point')} value={name} placeholder={point} maxLength={80} onChange={(event) => setName(event.target.value)} />
        <LengthField kind="level" label={t('surveys.yard.reading')} value={value} onChange={setValue} />
        {role === 'outlet' ? <LengthField label={t('surveys.yard.pipe')} value={distance} onChange={setDistance} /> : null}
        {role === 'outlet' ? <LengthField kind="height" label={t('surveys.yard.water')} optional value={tailwater} onChange={setTailwater} /> : null}
      </div>
      {questions.map((question) => <Notice key={question.code} severity={question.impossible ? 'stop' : 'caution'}><p>{t(question.code, question.params)}</p></Notice>)}
      <div className="row"><Button type="submit" kind="main" disabled={value === null || impossible}>{t(questions.length > 0 && !impossible ? 'surveys.yard.keepAnyway' : 'surveys.yard.add')}</Button></div>
    </form>
  );
}
