import { quantityCodes } from '@yardfall/calc';
import type { PriceItem } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { usePriceItems } from '../api/prices.ts';
import { emptyItem, unpriced } from '../model/items.ts';
import { ItemDialog } from './ItemDialog.tsx';

/** What the company pays for each thing that a design can need. */
export function PriceList({ edit }: { readonly edit: boolean }) {
  const { t } = useText();
  const [shown, setShown] = useState(false);
  return (
    <details className="price-fold" onToggle={(event) => setShown(event.currentTarget.open)}>
      <summary>{t('prices.list')}</summary>
      {shown ? <Items edit={edit} /> : null}
    </details>
  );
}

function Items({ edit }: { readonly edit: boolean }) {
  const { t } = useText();
  const { data, error, isPending } = usePriceItems();
  const [opened, setOpened] = useState<PriceItem | null>(null);
  if (isPending) return <Loading what={t('prices.listLoading')} />;
  const items = data?.data.items ?? [];
  const free = unpriced(Object.keys(quantityCodes), items);
  return (
    <div className="stack">
      <p className="faint measure">{t('prices.listWhy')}</p>
      <ProblemNotice problem={error} />
      {items.length === 0 ? <p>{t('prices.listEmpty')}</p> : null}
      <ol className="price-lines">{items.map((item) => <Item key={item.code} item={item} onOpen={edit ? () => setOpened(item) : null} />)}</ol>
      {edit && free[0] !== undefined ? <div className="row"><Button onClick={() => setOpened(emptyItem(free[0] ?? ''))}>{t('prices.newItem')}</Button></div> : null}
      {opened ? <ItemDialog key={opened.code} item={opened} free={opened.id === '' ? free : []} onClose={() => setOpened(null)} /> : null}
    </div>
  );
}

function Item({ item, onOpen }: { readonly item: PriceItem; readonly onOpen: (() => void) | null }) {
  const { t } = useText();
  return (
    <li>
      <span>
        {onOpen ? <button type="button" className="price-open" aria-label={t('prices.changeLine', { name: item.name })} onClick={onOpen}>{item.name}</button> : item.name}
        {item.active ? null : <span className="faint price-notes">{t('prices.inactive')}</span>}
      </span>
      <span className="faint">{t(`prices.kind.${item.kind}`)}</span>
      <span className="figure price-cost">{t('prices.perUnit', { cost: item.unitCost / 100, unit: t(`prices.unit.${item.unit}`) })}</span>
    </li>
  );
}
