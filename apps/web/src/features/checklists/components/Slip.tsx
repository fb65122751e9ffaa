import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { TextField } from '../../../components/Field.tsx';
import { fieldsOf } from '../../../lib/form.ts';
import { useMinute } from '../../../hooks/useMinute.ts';
import { useMe } from '../../../hooks/useMe.ts';
import { useText } from '../../../lib/reader.tsx';
import { mistypedBy } from '../model/slips.ts';
import type { EvidenceProps } from './Evidence.tsx';

/** A figure that was mistyped is taken back by whoever typed it, within minutes and with the reason; it stays on record. */
export function Slip({ view, record }: EvidenceProps) {
  const { t } = useText();
  const { me } = useMe();
  const now = useMinute();
  const [asking, setAsking] = useState(false);
  const figure = mistypedBy(view, me?.id ?? null, now);
  if (figure === null) return null;
  if (!asking) return <Button size="crew" wide onClick={() => setAsking(true)}>{t('checklists.way.struck')}</Button>;
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    record.record([{ kind: 'struck', figure, reason: fieldsOf(event.currentTarget)('reason') }], () => setAsking(false));
  };
  return (
    <form className="stack evidence" onSubmit={submit}>
      <TextField label={t('checklists.way.struck.reason')} hint={t('checklists.way.struck.hint')} name="reason" required minLength={8} maxLength={500} autoComplete="off" />
      <div className="row">
        <Button type="submit" size="crew" kind="main" disabled={record.busy}>{t('checklists.way.struck')}</Button>
        <Button kind="text" size="crew" onClick={() => setAsking(false)}>{t('ui.cancel')}</Button>
      </div>
    </form>
  );
}
