import { isLooser, isOrdered, isReached, limitIds, limits, type LimitId } from '@yardfall/calc';
import type { WantedLimit } from '@yardfall/contracts';
import { sourceWords, typedUnit } from '@yardfall/text';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { TextField } from '../../../components/Field.tsx';
import { NumberField } from '../../../components/NumberField.tsx';
import { Select } from '../../../components/Select.tsx';
import { useText } from '../../../lib/reader.tsx';
import { limitText } from './limitText.ts';

interface LimitFormProps {
  readonly busy: boolean;
  readonly onSet: (limit: WantedLimit) => void;
}

/** One limit of the company's own: which, good, stop, and why when it is looser. */
export function LimitForm({ busy, onSet }: LimitFormProps) {
  const { t } = useText();
  const [id, setId] = useState<LimitId | ''>('');
  return (
    <div className="stack company-form">
      <Select label={t('limits.page.choose')} value={id} onChange={setId} choices={limitIds.map((each) => ({ value: each, label: `${each}: ${t(`limits.${each}`)}` }))} />
      {id === '' ? null : <Values key={id} id={id} busy={busy} onSet={onSet} />}
    </div>
  );
}

function Values({ id, busy, onSet }: LimitFormProps & { readonly id: LimitId }) {
  const text = useText();
  const { t, units, language } = text;
  const limit = limits[id];
  const [pass, setPass] = useState<number | null>(limit.pass);
  const [fail, setFail] = useState<number | null>(limit.fail);
  const [why, setWhy] = useState('');
  const { sign, size } = typedUnit(limit.quantity, units);
  const pair = pass === null || fail === null ? null : { pass, fail };
  const ordered = pair === null || isOrdered(id, pair);
  const needsWhy = pair !== null && isLooser(id, pair) && why.trim() === '';
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (pair !== null && ordered && !needsWhy) onSet({ limit: id, ...pair, why });
  };
  return (
    <form className="stack" onSubmit={submit}>
      <p>{t('limits.page.usualFrom', { limit: limitText(id, limit, text), source: sourceWords(language, limit.source) })}</p>
      <NumberField label={t('limits.page.pass')} unit={sign} perUnit={size} value={pass} onChange={setPass} error={pass === null ? t('ui.needed') : undefined} />
      {isReached(limit) ? (
        <NumberField label={t('limits.page.fail')} unit={sign} perUnit={size} value={fail} onChange={setFail}
          error={fail === null ? t('ui.needed') : ordered ? undefined : t('document.limitOrder', { id })} />
      ) : null}
      <TextField label={t('limits.page.why')} hint={t('limits.page.whyHint')} value={why} maxLength={500} error={needsWhy ? t('document.limitNeedsReason', { id }) : undefined}
        onChange={(event) => setWhy(event.target.value)} />
      <div><Button type="submit" kind="main" busy={busy}>{busy ? t('ui.sending') : t('limits.page.set')}</Button></div>
    </form>
  );
}
