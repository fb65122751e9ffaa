import { fixedFigures, measureCode, type OwnFigure } from '@yardfall/contracts';
import { LengthField } from '../../../components/LengthField.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { useText } from '../../../lib/reader.tsx';

interface FigureLimitsProps {
  readonly id: string;
  readonly value: readonly OwnFigure[];
  readonly onChange: (value: readonly OwnFigure[]) => void;
}

const units: Readonly<Record<string, { readonly unit?: string; readonly perUnit: number }>> = { share: { unit: '%', perUnit: 0.01 }, minutes: { unit: 'min', perUnit: 60 }, seconds: { unit: 's', perUnit: 1 } };

/** The limits of single figures of a step, those that are the same on every job; what is left empty is as built in. */
export function FigureLimits({ id, value, onChange }: FigureLimitsProps) {
  const { t } = useText();
  const set = (measure: string, side: 'min' | 'max', to: number | null) => {
    const own = { ...(value.find((one) => one.measure === measure) ?? { measure, min: null, max: null }), [side]: to };
    const rest = value.filter((one) => one.measure !== measure);
    onChange(own.min === null && own.max === null ? rest : [...rest, own]);
  };
  return (
    <fieldset className="stack">
      <legend>{t('steps.figures')}</legend>
      <p className="faint">{t('steps.figures.hint')}</p>
      {fixedFigures(id).flatMap((measure) => (['min', 'max'] as const).filter((side) => measure[side] !== null).map((side) => {
        const field = { label: t(`steps.figures.${side}`, { measure: measureCode(measure.name) }), optional: true, value: value.find((one) => one.measure === measure.name)?.[side] ?? null, onChange: (to: number | null) => set(measure.name, side, to) };
        const { quantity } = measure;
        return quantity === 'height' || quantity === 'length' ? <LengthField key={measure.name + side} kind={quantity} {...field} /> : <NumberField key={measure.name + side} {...(units[quantity] ?? { perUnit: 1 })} {...field} />;
      }))}
    </fieldset>
  );
}
