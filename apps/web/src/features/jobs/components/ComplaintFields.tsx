import { CheckField, TextArea, TextField } from '../../../components/Field.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { useText } from '../../../lib/reader.tsx';
import type { ComplaintInput } from '../model/jobDraft.ts';
import type { FieldsProps } from './fieldsProps.ts';

export function ComplaintFields({ value, onChange, error }: FieldsProps<ComplaintInput>) {
  const { t } = useText();
  const set = <K extends keyof ComplaintInput>(key: K, next: ComplaintInput[K]) => onChange({ ...value, [key]: next });
  return (
    <fieldset className="stack">
      <legend className="field-legend">{t('jobs.complaint')}</legend>
      <TextArea label={t('jobs.complaint.words')} value={value.words} maxLength={2000} required error={error('complaint.words')} onChange={(e) => set('words', e.target.value)} />
      <LengthField kind="height" label={t('jobs.complaint.depth')} value={value.depth} optional error={error('complaint.depth')} onChange={(depth) => set('depth', depth)} />
      <NumberField label={t('jobs.complaint.startsAfter')} unit={t('jobs.unit.minutes')} perUnit={60} value={value.startsAfter} optional error={error('complaint.startsAfter')}
        onChange={(seconds) => set('startsAfter', seconds)} />
      <NumberField label={t('jobs.complaint.staysFor')} unit={t('jobs.unit.hours')} perUnit={3600} value={value.staysFor} optional error={error('complaint.staysFor')}
        onChange={(seconds) => set('staysFor', seconds)} />
      <NumberField label={t('jobs.complaint.timesPerYear')} unit={t('jobs.unit.times')} value={value.timesPerYear} optional error={error('complaint.timesPerYear')}
        onChange={(times) => set('timesPerYear', times)} />
      <TextField label={t('jobs.complaint.door')} value={value.door} maxLength={120} optional onChange={(e) => set('door', e.target.value)} />
      <TextField label={t('jobs.complaint.rainDate')} type="date" value={value.rainDate ?? ''} optional error={error('complaint.rainDate')} onChange={(e) => set('rainDate', e.target.value || null)} />
      <TextArea label={t('jobs.complaint.tried')} value={value.tried} maxLength={1000} rows={2} optional onChange={(e) => set('tried', e.target.value)} />
      <div>
        <CheckField label={t('jobs.complaint.enteredHouse')} checked={value.enteredHouse} onChange={(e) => set('enteredHouse', e.target.checked)} />
        <CheckField label={t('jobs.complaint.onDryDays')} checked={value.onDryDays} onChange={(e) => set('onDryDays', e.target.checked)} />
      </div>
    </fieldset>
  );
}
