import { TextField } from '../../../components/Field.tsx';
import { useText } from '../../../lib/reader.tsx';
import type { Typing } from '../api/useStepDraft.ts';
import { factsOf } from '../model/evidence.ts';
import type { ItemView } from '../model/view.ts';

/** The number of a permit, a ticket or a certificate. The pump-down is a document that the office holds itself. */
export function DocumentEvidence({ view, typing: { draft, change } }: { readonly view: ItemView; readonly typing: Typing }) {
  const { t, q } = useText();
  const last = factsOf(view, 'document').at(-1);
  if (view.item.template === 'J1') return <p>{last ? t('checklists.proofAttached') : <a href="#proof">{t('checklists.proofFirst')}</a>}</p>;
  return (
    <div className="stack evidence">
      <TextField label={t('checklists.document')} name="reference" maxLength={200} autoComplete="off" value={draft.reference} onChange={(event) => change({ reference: event.currentTarget.value })} />
      <TextField label={t('checklists.documentDate')} name="validOn" type="date" optional value={draft.validOn} onChange={(event) => change({ validOn: event.currentTarget.value })} />
      {last ? <p className="verdict verdict-good"><span aria-hidden="true">{'✓'}</span>{last.validOn === null ? t('checklists.documentIs', { reference: last.reference }) : t('checklists.documentIsOf', { reference: last.reference, on: q('date', last.validOn) })}</p> : null}
    </div>
  );
}
