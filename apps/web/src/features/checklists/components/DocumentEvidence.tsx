import { type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { TextField } from '../../../components/Field.tsx';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';
import { factsOf } from '../model/evidence.ts';
import type { EvidenceProps } from './Evidence.tsx';

/** The number of a permit, a ticket or a certificate. The pump-down is a document that the office holds itself. */
export function DocumentEvidence({ view, record }: EvidenceProps) {
  const { t, q } = useText();
  const last = factsOf(view, 'document').at(-1);
  if (view.item.template === 'J1') return <p>{last ? t('checklists.proofAttached') : <a href="#proof">{t('checklists.proofFirst')}</a>}</p>;
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    const field = fieldsOf(form);
    record.record({ kind: 'document', reference: field('reference'), validOn: field('validOn') || null }, () => form.reset());
  };
  return (
    <form className="stack evidence" onSubmit={submit}>
      <TextField label={t('checklists.document')} name="reference" required maxLength={200} autoComplete="off" />
      <TextField label={t('checklists.documentDate')} name="validOn" type="date" optional />
      {last ? <p className="faint">{last.validOn === null ? t('checklists.documentIs', { reference: last.reference }) : t('checklists.documentIsOf', { reference: last.reference, on: q('date', last.validOn) })}</p> : null}
      <Button type="submit" size="crew" wide disabled={record.busy}>{t('checklists.recordDocument')}</Button>
    </form>
  );
}
