import type { PriceItem } from '@yardfall/contracts';
import { CheckField } from '../../../components/Field.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import { kinds, labourCode, perDollar, units } from '../model/sheet.ts';

type Costs = Pick<PriceItem, 'kind' | 'unit' | 'unitCost' | 'taxable'>;

interface CostFieldsProps {
  readonly value: Costs & { readonly code: string; readonly quantity?: number };
  readonly onChange: (part: Partial<Costs> & { readonly quantity?: number }) => void;
}

/** What a thing is counted in and what one of it costs us. */
export function CostFields({ value, onChange }: CostFieldsProps) {
  const { t } = useText();
  // Crew labor is paid at the rate of the sheet.
  const atRate = value.code === labourCode;
  return (
    <div className="price-fields">
      {value.quantity === undefined ? null : (
        <NumberField label={t('prices.quantity')} value={value.quantity} required onChange={(quantity) => { if (quantity !== null) onChange({ quantity: Math.max(0, quantity) }); }} />
      )}
      <Select label={t('prices.unit')} value={value.unit} disabled={atRate} choices={units.map((unit) => ({ value: unit, label: t(`prices.unit.${unit}`) }))} onChange={(unit) => onChange({ unit })} />
      <NumberField label={t('prices.unitCost')} value={value.unitCost} perUnit={perDollar} decimals={4} required disabled={atRate}
        onChange={(cost) => { if (cost !== null) onChange({ unitCost: Math.max(0, Math.round(cost)) }); }} />
      <Select label={t('prices.kind')} value={value.kind} disabled={atRate} choices={kinds.map((kind) => ({ value: kind, label: t(`prices.kind.${kind}`) }))} onChange={(kind) => onChange({ kind })} />
      <CheckField label={t('prices.taxable')} checked={value.taxable} onChange={(event) => onChange({ taxable: event.target.checked })} />
    </div>
  );
}
