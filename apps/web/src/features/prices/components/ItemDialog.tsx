import type { PriceItem } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { CheckField, TextField } from '../../../components/Field.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useSaveItem } from '../api/prices.ts';
import { emptyItem } from '../model/items.ts';
import { CostFields } from './CostFields.tsx';

interface ItemDialogProps {
  readonly item: PriceItem;
  /** Quantities without a price, to choose from for a new one; empty when a stored price is changed. */
  readonly free: readonly string[];
  readonly onClose: () => void;
}

export function ItemDialog({ item, free, onClose }: ItemDialogProps) {
  const { t, say } = useText();
  const named = (one: PriceItem) => (one.name === '' ? { ...one, name: say(`prices.item.${one.code}`) } : one);
  const [now, setNow] = useState(() => named(item));
  const { write, busy, problem } = useSaveItem(onClose);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const { id: _, code, ...body } = now;
    write({ params: { code }, body });
  };
  return (
    <Dialog open title={free.length > 0 ? t('prices.newItem') : t('prices.changeLine', { name: item.name })} onClose={onClose}>
      <form className="stack" onSubmit={submit}>
        {free.length > 0 ? (
          <Select label={t('prices.code')} value={now.code} choices={free.map((code) => ({ value: code, label: say(`prices.item.${code}`) }))} onChange={(code) => setNow(named(emptyItem(code)))} />
        ) : null}
        <TextField label={t('prices.name')} required maxLength={160} value={now.name} onChange={(event) => setNow({ ...now, name: event.target.value })} />
        <CostFields value={now} onChange={({ quantity: _, ...part }) => setNow({ ...now, ...part })} />
        <NumberField label={t('prices.hours')} value={now.hoursPerUnit} decimals={4} required onChange={(hours) => { if (hours !== null) setNow({ ...now, hoursPerUnit: Math.max(0, hours) }); }} />
        <CheckField label={t('prices.active')} checked={now.active} onChange={(event) => setNow({ ...now, active: event.target.checked })} />
        <ProblemNotice problem={problem} />
        <div className="row"><Button type="submit" kind="main" busy={busy}>{t('prices.saveItem')}</Button></div>
      </form>
    </Dialog>
  );
}
