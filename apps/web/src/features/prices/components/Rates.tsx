import { NumberField } from '../../../components/NumberField.tsx';
import { useText } from '../../../lib/reader.tsx';
import { basisPointsOf, perDollar, percentOf, withRates, type EditedSheet, type SheetRates } from '../model/sheet.ts';

interface RatesProps {
  readonly sheet: EditedSheet;
  readonly onChange: (sheet: EditedSheet) => void;
}

/** Margin with the markup it means beside it; tax, contingency and the hour of the crew. */
export function Rates({ sheet, onChange }: RatesProps) {
  const { t } = useText();
  const { rates } = sheet;
  const put = (part: Partial<SheetRates>) => onChange(withRates(sheet, { ...rates, ...part }));
  const share = rates.marginBasisPoints / 10_000;
  return (
    <div className="price-fields">
      <NumberField label={t('prices.margin')} value={rates.marginBasisPoints / 100} decimals={2} required
        hint={t('prices.isMarkup', { margin: percentOf(rates.marginBasisPoints), markup: percentOf(Math.round((share / (1 - share)) * 10_000)) })}
        onChange={(margin) => { if (margin !== null) put({ marginBasisPoints: basisPointsOf(margin, 9500) }); }} />
      <NumberField label={t('prices.tax')} value={rates.taxBasisPoints / 100} decimals={2} required onChange={(tax) => { if (tax !== null) put({ taxBasisPoints: basisPointsOf(tax, 3000) }); }} />
      <NumberField label={t('prices.contingency')} value={rates.contingencyBasisPoints / 100} decimals={2} required
        onChange={(part) => { if (part !== null) put({ contingencyBasisPoints: basisPointsOf(part, 5000) }); }} />
      <NumberField label={t('prices.labourRate')} value={rates.labourRate} perUnit={perDollar} decimals={4} required
        onChange={(rate) => { if (rate !== null) put({ labourRate: Math.max(0, Math.round(rate)) }); }} />
    </div>
  );
}
