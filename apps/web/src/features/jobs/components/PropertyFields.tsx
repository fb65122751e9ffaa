import { TextArea, TextField } from '../../../components/Field.tsx';
import { StateAndZone } from '../../../components/StateAndZone.tsx';
import { useText } from '../../../lib/reader.tsx';
import type { PropertyDraft } from '../model/jobDraft.ts';
import type { FieldsProps } from './fieldsProps.ts';

export function PropertyFields({ value, onChange, error }: FieldsProps<PropertyDraft>) {
  const { t } = useText();
  return (
    <fieldset className="stack">
      <legend className="field-legend">{t('jobs.property')}</legend>
      <TextField label={t('jobs.property.address')} value={value.address} maxLength={300} required autoComplete="off" error={error('property.address')}
        onChange={(e) => onChange({ ...value, address: e.target.value })} />
      <StateAndZone value={value} onChange={(place) => onChange({ ...value, ...place })} />
      <TextField label={t('jobs.property.gateCode')} value={value.gateCode} maxLength={60} optional onChange={(e) => onChange({ ...value, gateCode: e.target.value })} />
      <TextArea label={t('jobs.property.notes')} value={value.notes} maxLength={1000} rows={2} optional onChange={(e) => onChange({ ...value, notes: e.target.value })} />
    </fieldset>
  );
}
