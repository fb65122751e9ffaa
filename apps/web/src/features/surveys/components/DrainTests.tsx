import { Button } from '../../../components/Button.tsx';
import { CheckField, TextField } from '../../../components/Field.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { useText } from '../../../lib/reader.tsx';
import { emptyDrainTest, type DrainTest } from '../model/content.ts';
import type { ContentProps } from './LevelBook.tsx';

const GPM = 0.003785411784 / 60;

/** Hose test of an old drain: a calibrated flow until it backs up tells how much pipe is open. */
export function DrainTests({ content, onChange }: ContentProps) {
  const { t, units } = useText();
  const tests = content.drainTests;
  const put = (drainTests: DrainTest[]) => onChange({ ...content, drainTests });
  const change = (id: string, part: Partial<DrainTest>) => put(tests.map((test) => (test.id === id ? { ...test, ...part } : test)));
  return (
    <div className="stack">
      <p className="faint measure">{t('surveys.drainsWhy')}</p>
      {tests.map((test) => (
        <fieldset key={test.id} className="drain-test">
          <legend>{test.name}</legend>
          <TextField label={t('surveys.drainName')} value={test.name} required onChange={(event) => change(test.id, { name: event.target.value })} />
          <LengthField label={t('surveys.drainDiameter')} kind="size" value={test.diameter} onChange={(diameter) => { if (diameter !== null) change(test.id, { diameter }); }} />
          <NumberField label={t('surveys.hoseFlow')} value={test.hoseFlow} unit={units === 'us' ? 'gpm' : 'L/s'} perUnit={units === 'us' ? GPM : 0.001} onChange={(hoseFlow) => { if (hoseFlow !== null) change(test.id, { hoseFlow }); }} />
          <NumberField label={t('surveys.backedUp')} hint={t('surveys.backedUpHint')} optional value={test.backedUpAfter} unit="min" perUnit={60} onChange={(backedUpAfter) => change(test.id, { backedUpAfter })} />
          <LengthField label={t('surveys.cameraStop')} optional value={test.cameraStop} onChange={(cameraStop) => change(test.id, { cameraStop })} />
          <CheckField label={t('surveys.dyeSeen')} checked={test.dyeSeen} onChange={(event) => change(test.id, { dyeSeen: event.target.checked })} />
          <Button kind="text" onClick={() => put(tests.filter((other) => other.id !== test.id))}>{t('surveys.removeDrain')}</Button>
        </fieldset>
      ))}
      <div className="row"><Button onClick={() => put([...tests, emptyDrainTest(t('surveys.drainDefault'))])}>{t('surveys.addDrain')}</Button></div>
    </div>
  );
}
