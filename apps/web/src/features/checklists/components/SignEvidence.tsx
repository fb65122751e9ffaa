import { itemText, privateStates, type Signer } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { CheckField, TextField } from '../../../components/Field.tsx';
import { fieldsOf } from '../../../lib/form.ts';
import { useText, type Text } from '../../../lib/reader.tsx';
import { factsOf } from '../model/evidence.ts';
import { linesAsked, ownLineWords } from '../model/ownLines.ts';
import type { ItemView } from '../model/view.ts';
import type { EvidenceProps } from './Evidence.tsx';
import { DrawnSignature, SignaturePad } from './SignaturePad.tsx';

/** Signed on this phone by name, with the statement that is signed in sight. */
export function SignEvidence({ view, record, signer }: EvidenceProps & { readonly signer: Signer }) {
  const text = useText();
  const { t } = text;
  const [drawn, setDrawn] = useState('');
  const [byName, setByName] = useState(false);
  const signed = factsOf(view, 'signed').findLast((fact) => fact.signer === signer);
  const again = view.missing.some((mark) => mark === `signature:${signer}` || mark === 'signature:second');
  if (signed && !again) return <>{signed.drawn === undefined ? null : <DrawnSignature path={signed.drawn} name={signed.name} />}<p className="verdict verdict-good"><span aria-hidden="true">{'✓'}</span>{t('checklists.signedBy', { name: signed.name, signer: `checklists.signer.${signer}` })}</p></>;
  const licensed = signer === 'electrician' || signer === 'inspector';
  const statement = statementOf(view, text);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const field = fieldsOf(event.currentTarget);
    record.record([{ kind: 'signed', signer, name: field('name'), licence: licensed ? field('licence') : '', statement, ...(drawn === '' ? {} : { drawn }) }]);
  };
  return (
    <form className="stack evidence" onSubmit={submit}>
      <p className="notice-title">{t('checklists.signature', { signer: `checklists.signer.${signer}` })}</p>
      <TextField label={t('checklists.signName')} name="name" required maxLength={120} autoComplete="off" />
      {licensed ? <TextField label={t('checklists.signLicense')} name="licence" required maxLength={60} autoComplete="off" /> : null}
      {byName ? null : <SignaturePad path={drawn} onChange={setDrawn} />}
      <CheckField label={t('checklists.signByName')} checked={byName} onChange={(event) => { setByName(event.target.checked); setDrawn(''); }} />
      <CheckField label={statement} required />
      <Button type="submit" size="crew" wide disabled={record.busy || (drawn === '' && !byName)}>{t('checklists.sign')}</Button>
    </form>
  );
}

/** What is signed: that the step is as it should be, or the list of the homeowner's own lines as it stands. */
function statementOf(view: ItemView, { t, say }: Text): string {
  const asked = linesAsked(view.item.requirement.texts);
  if (asked.length === 0) return t('checklists.statement', { what: say(itemText(view.item.requirement, 'what'), view.item.requirement.params) });
  const told = factsOf(view, 'written');
  const list = asked.flatMap(({ name, question }) => {
    const state = privateStates.find((one) => one === told.findLast((fact) => fact.name === name)?.text);
    return state === undefined ? [] : [t('checklists.private.statementLine', { line: `checklists.private.${question}`, state: ownLineWords(question, state) })];
  });
  return t('checklists.private.statement', { list: list.join(' ') });
}
