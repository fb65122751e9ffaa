import { TextField } from '../../../components/Field.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { useText } from '../../../lib/reader.tsx';
import type { Cement } from '../model/cement.ts';

interface CementFieldsProps {
  readonly value: Cement;
  readonly onChange: (value: Cement) => void;
}

/** How long joints cure before they bear pressure, as the label of the company's own cement has it. */
export function CementFields({ value, onChange }: CementFieldsProps) {
  const { t } = useText();
  return (
    <fieldset className="stack">
      <legend>{t('steps.cement')}</legend>
      <p className="faint">{t('steps.cement.hint')}</p>
      <TextField label={t('steps.cement.product')} optional maxLength={80} value={value.product} onChange={(event) => onChange({ ...value, product: event.target.value })} />
      {(['warm', 'cool', 'cold'] as const).map((name) => (
        <NumberField key={name} label={t(`steps.cement.${name}`)} unit="min" perUnit={60} optional value={value[name]} onChange={(wait) => onChange({ ...value, [name]: wait })} />
      ))}
    </fieldset>
  );
}
