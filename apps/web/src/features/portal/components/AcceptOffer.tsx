import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { CheckField, TextField } from '../../../components/Field.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useAccept } from '../api/portal.ts';

/** The yes: a typed name, the consent to sign here, and the fingerprint of what was read. */
export function AcceptOffer({ offerId, sha256 }: { readonly offerId: string; readonly sha256: string }) {
  const { t } = useText();
  const [name, setName] = useState('');
  const [agreed, setAgreed] = useState(false);
  const { write, busy, problem } = useAccept();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    write({ params: { offerId }, body: { name: name.trim(), sha256, electronicRecords: true } });
  };
  return (
    <form className="stack drain-accept" onSubmit={submit} aria-label={t('portal.accept')}>
      <h3>{t('portal.accept')}</h3>
      <p>{t('portal.accept.noRush')}</p>
      <TextField label={t('portal.accept.name')} required minLength={2} maxLength={120} autoComplete="name" value={name} onChange={(event) => setName(event.target.value)} />
      <CheckField label={t('portal.accept.consent')} required checked={agreed} onChange={(event) => setAgreed(event.target.checked)} />
      <ProblemNotice problem={problem} />
      <Button type="submit" kind="main" size="crew" wide busy={busy} disabled={busy || !agreed || name.trim().length < 2}>{t('portal.accept.do')}</Button>
    </form>
  );
}
