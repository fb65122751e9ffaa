import type { SurveyContent } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { TextField } from '../../../components/Field.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { useText } from '../../../lib/reader.tsx';
import { emptyReading, type Reading } from '../model/content.ts';

export interface ContentProps {
  readonly content: SurveyContent;
  readonly onChange: (content: SurveyContent) => void;
}

/** One line a shot: the point, and the rod where it was read. */
export function LevelBook({ content, onChange }: ContentProps) {
  const { t } = useText();
  const book = content.levelBook;
  const put = (readings: readonly Reading[]) => onChange({ ...content, levelBook: { ...book, readings: [...readings] } });
  const change = (id: string, part: Partial<Reading>) => put(book.readings.map((reading) => (reading.id === id ? { ...reading, ...part } : reading)));
  return (
    <div className="stack">
      <p className="faint measure">{t(book.mode === 'direct' ? 'surveys.directHint' : 'surveys.bookHint')}</p>
      <ol className="level-book">
        {book.readings.map((reading) => (
          <li key={reading.id}>
            <TextField label={t('surveys.point')} value={reading.point} onChange={(event) => change(reading.id, { point: event.target.value })} />
            {book.mode === 'direct' ? (
              <LengthField label={t('surveys.direct')} kind="level" value={reading.direct} onChange={(direct) => change(reading.id, { direct })} />
            ) : (
              <>
                <LengthField label={t('surveys.backsight')} kind="level" value={reading.backsight} onChange={(backsight) => change(reading.id, { backsight })} />
                <LengthField label={t('surveys.intermediate')} kind="level" value={reading.intermediate} onChange={(intermediate) => change(reading.id, { intermediate })} />
                <LengthField label={t('surveys.foresight')} kind="level" value={reading.foresight} onChange={(foresight) => change(reading.id, { foresight })} />
              </>
            )}
            <Button kind="text" onClick={() => put(book.readings.filter((other) => other.id !== reading.id))}>{t('surveys.removeShot', { point: reading.point })}</Button>
          </li>
        ))}
      </ol>
      <div className="row"><Button onClick={() => put([...book.readings, emptyReading()])}>{t('surveys.addShot')}</Button></div>
    </div>
  );
}
