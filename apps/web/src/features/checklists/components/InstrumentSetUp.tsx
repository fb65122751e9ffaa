import { Choices } from '../../../components/Choices.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { useText } from '../../../lib/reader.tsx';
import type { Instrument } from '../api/useInstrument.ts';

/** Levels as they are read: by themselves, or by a rod below an instrument that was set on the bench mark. The phone does the sum. */
export function InstrumentSetUp({ instrument: { isRod, setRod, benchMark, backsight, setBacksight, height } }: { readonly instrument: Instrument }) {
  const { t } = useText();
  return (
    <div className="stack evidence instrument">
      <Choices look="crew" label={t('checklists.readAs')} value={isRod ? 'rod' : 'level'} onChange={(as) => setRod(as === 'rod')}
        choices={[{ value: 'level', label: t('checklists.readAs.level') }, { value: 'rod', label: t('checklists.readAs.rod') }]} />
      {!isRod || benchMark === null ? null : (
        <>
          <LengthField crew="signed" kind="length" label={t('checklists.backsight', { name: benchMark.name, level: benchMark.level })} value={backsight} onChange={setBacksight} />
          {height === null ? <p className="faint">{t('checklists.backsight.why')}</p> : <p className="field-reads">{t('checklists.instrumentAt', { height })}</p>}
        </>
      )}
    </div>
  );
}
