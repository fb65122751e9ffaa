import { type FormEvent } from 'react';
import { isMessageCode } from '@yardfall/text';
import { Button } from '../../../components/Button.tsx';
import { TextField } from '../../../components/Field.tsx';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';
import { factsOf } from '../model/evidence.ts';
import type { EvidenceProps } from './Evidence.tsx';

/** A serial or a model as it stands on the plate. */
export function TextEvidence({ view, record, name }: EvidenceProps & { readonly name: string }) {
  const { t, say } = useText();
  const last = factsOf(view, 'written').findLast((fact) => fact.name === name);
  const code = `checklists.plate.${name}`;
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = event.currentTarget;
    record.record({ kind: 'written', name, text: fieldsOf(form)('text') }, () => form.reset());
  };
  return (
    <form className="stack evidence" onSubmit={submit} data-text={name}>
      <TextField label={isMessageCode(code) ? say(code) : name} name="text" required maxLength={120} autoComplete="off" />
      {last ? <p className="verdict verdict-good"><span aria-hidden="true">{'✓'}</span>{last.text}</p> : null}
      <Button type="submit" size="crew" wide disabled={record.busy}>{t('checklists.recordText')}</Button>
    </form>
  );
}
