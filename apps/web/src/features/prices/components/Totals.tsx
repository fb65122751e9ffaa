import type { PriceSheet } from '@yardfall/contracts';
import { Notice } from '../../../components/Notice.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';
import { kinds, percentOf } from '../model/sheet.ts';

/** The sum of the stored sheet, with the margin beside the markup that it is. */
export function Totals({ sheet: { totals } }: { readonly sheet: PriceSheet }) {
  const { t, q } = useText();
  const margin = percentOf(totals.marginBasisPoints);
  const row = (key: string, what: string, amount: number, strong = false) => ({ key, strong, cells: { what, amount: q('money', amount) } });
  const rows = [
    ...kinds.flatMap((kind) => (totals.byKind[kind] === undefined ? [] : [row(kind, t(`prices.kind.${kind}`), totals.byKind[kind])])),
    row('tax', t('prices.total.tax'), totals.tax),
    row('direct', t('prices.total.direct'), totals.direct, true),
    row('contingency', t('prices.total.contingency'), totals.contingency),
    row('cost', t('prices.total.cost'), totals.cost, true),
    row('margin', t('prices.total.margin', { margin, markup: percentOf(totals.markupBasisPoints) }), totals.margin),
    row('price', t('prices.total.price'), totals.price, true),
  ];
  return (
    <div className="stack price-totals">
      <Table caption={t('prices.totals')} captionUnseen rows={rows}
        columns={[{ key: 'what', head: t('prices.total.what') }, { key: 'amount', head: t('prices.total.amount'), figure: true }]} />
      {totals.lossAsMarkup > 0 ? <Notice severity="caution"><p>{t('prices.asMarkup', { margin, price: totals.priceAsMarkup, loss: totals.lossAsMarkup })}</p></Notice> : null}
    </div>
  );
}
