import { TextField } from '../../../components/Field.tsx';
import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import { phonesOf, type CustomerDraft } from '../model/jobDraft.ts';
import type { FieldsProps } from './fieldsProps.ts';

export function CustomerFields({ value, onChange, error }: FieldsProps<CustomerDraft>) {
  const { t } = useText();
  return (
    <fieldset className="stack">
      <legend className="field-legend">{t('jobs.customer')}</legend>
      <TextField label={t('jobs.customer.name')} value={value.name} maxLength={120} required error={error('customer.name')} onChange={(e) => onChange({ ...value, name: e.target.value })} />
      <TextField label={t('jobs.customer.phones')} defaultValue={value.phones.join(', ')} inputMode="tel" optional error={error('customer.phones')}
        onChange={(e) => onChange({ ...value, phones: phonesOf(e.target.value) })} />
      <TextField label={t('identity.email')} type="email" value={value.email ?? ''} optional error={error('customer.email')}
        onChange={(e) => onChange({ ...value, email: e.target.value.trim() === '' ? null : e.target.value.trim() })} />
      <Select label={t('jobs.customer.language')} value={value.language} onChange={(language) => onChange({ ...value, language })}
        choices={(['en', 'es'] as const).map((code) => ({ value: code, label: t(`ui.language.${code}`) }))} />
    </fieldset>
  );
}
