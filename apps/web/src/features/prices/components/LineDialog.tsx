import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { TextField } from '../../../components/Field.tsx';
import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import { usePriceItems } from '../api/prices.ts';
import { changedLine, departs, lineFromItem, type EditedLine } from '../model/sheet.ts';
import { CostFields } from './CostFields.tsx';

interface LineDialogProps {
  readonly line: EditedLine;
  readonly isNew: boolean;
  readonly onDone: (line: EditedLine) => void;
  readonly onRemove: () => void;
  readonly onClose: () => void;
}

/** One line. A figure that leaves the drawing asks for its reason. */
export function LineDialog({ line, isNew, onDone, onRemove, onClose }: LineDialogProps) {
  const { t } = useText();
  const [now, setNow] = useState(line);
  const asksReason = isNew ? line.origin === 'override' : departs(line, now);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    onDone(isNew ? now : changedLine(line, now));
  };
  return (
    <Dialog open title={isNew ? t(line.origin === 'allowance' ? 'prices.addAllowance' : 'prices.addLine') : t('prices.changeLine', { name: line.name })} onClose={onClose}>
      <form className="stack" onSubmit={submit}>
        {isNew && line.origin === 'allowance' ? <p className="measure">{t('prices.allowanceHint')}</p> : null}
        {isNew && line.origin === 'override' ? <FromList own={line} now={now} onChange={setNow} /> : null}
        <TextField label={t('prices.name')} required maxLength={160} value={now.name} onChange={(event) => setNow({ ...now, name: event.target.value })} />
        <CostFields value={now} onChange={(part) => setNow({ ...now, ...part })} />
        {asksReason || now.origin === 'override' ? (
          <TextField label={t('prices.reason')} hint={t('prices.reasonHint')} required={asksReason} maxLength={300} value={now.reason ?? ''} onChange={(event) => setNow({ ...now, reason: event.target.value })} />
        ) : null}
        <div className="row">
          <Button type="submit" kind="main">{t(isNew ? 'prices.addLine' : 'prices.keepLine')}</Button>
          {isNew ? null : <Button kind="danger" onClick={onRemove}>{t('prices.removeLine')}</Button>}
        </div>
      </form>
    </Dialog>
  );
}

function FromList({ own, now, onChange }: { readonly own: EditedLine; readonly now: EditedLine; readonly onChange: (line: EditedLine) => void }) {
  const { t } = useText();
  const items = usePriceItems().data?.data.items.filter((item) => item.active) ?? [];
  if (items.length === 0) return null;
  const pick = (code: string) => {
    const item = items.find((one) => one.code === code);
    onChange(item ? { ...lineFromItem(item), reason: now.reason } : { ...own, reason: now.reason });
  };
  return (
    <Select label={t('prices.fromList')} value={now.code} onChange={pick}
      choices={[{ value: own.code, label: t('prices.ownLine') }, ...items.map(({ code, name }) => ({ value: code, label: name }))]} />
  );
}
