import { isMessageCode } from '@yardfall/text';
import { CheckField } from '../../../components/Field.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import type { EntryField } from '../model/fields.ts';
import { unitSizes } from '../model/units.ts';

interface FigureFieldProps {
  readonly field: Exclude<EntryField, { readonly kind: 'curve' }>;
  readonly value: unknown;
  readonly onChange: (value: unknown) => void;
}

/** One figure of an entry in the reader's units. An unclear one leaves what was there. */
export function FigureField({ field, value, onChange }: FigureFieldProps) {
  const { say, units } = useText();
  const label = say(`library.field.${field.name}`);
  const figure = typeof value === 'number' ? value : null;
  const keep = (now: number | null) => { if (now !== null) onChange(now); };
  switch (field.kind) {
    case 'length': return <LengthField label={label} kind="size" value={figure} optional={field.optional === true} onChange={(now) => (now === null && field.optional === true ? onChange(null) : keep(now))} />;
    case 'area': return <NumberField label={label} value={figure} unit={units === 'us' ? 'in²' : 'cm²'} perUnit={units === 'us' ? unitSizes.area.sqin : unitSizes.area.cm2} onChange={keep} />;
    case 'mass': return <NumberField label={label} value={figure} unit={units === 'us' ? 'lb' : 'kg'} perUnit={units === 'us' ? unitSizes.mass.lb : 1} decimals={1} onChange={keep} />;
    case 'share': return <NumberField label={label} value={figure} unit="%" perUnit={0.01} onChange={keep} />;
    case 'number': return <NumberField label={label} value={figure} onChange={keep} />;
    case 'yesNo': return <CheckField label={label} checked={value === true} onChange={(event) => onChange(event.target.checked)} />;
    case 'choice': return (
      <Select label={label} value={String(value)} onChange={onChange} choices={field.choices.map((one) => ({ value: one, label: isMessageCode(`designs.choice.${one}`) ? say(`designs.choice.${one}`) : one }))} />
    );
  }
}
