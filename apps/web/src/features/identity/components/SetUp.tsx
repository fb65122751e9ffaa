import { identity } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { TextField } from '../../../components/Field.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { StateAndZone } from '../../../components/StateAndZone.tsx';
import { useWrite } from '../../../hooks/useWrite.ts';
import { fieldsOf } from '../../../lib/form.ts';
import { isNamed } from '../../../lib/issues.ts';
import { useText } from '../../../lib/reader.tsx';
import { defaultPlace } from '../../../lib/places.ts';
import { useEntered } from '../api/useEntered.ts';
import { PasswordField } from './Welcome.tsx';

/** The first company and its owner on an empty installation. */
export function SetUp({ token }: { readonly token: string }) {
  const { t } = useText();
  const entered = useEntered();
  const [place, setPlace] = useState(defaultPlace);
  const { write, busy, problem } = useWrite(identity.setUp, { onDone: (me) => entered(me) });
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const field = fieldsOf(event.currentTarget);
    write({ body: { token, companyName: field('companyName'), phone: field('phone'), ownerName: field('ownerName'), email: field('email'), password: field('password'), ...place } });
  };
  const error = (name: string) => (isNamed(problem, name) ? t('ui.checkField') : undefined);
  return (
    <form className="stack" onSubmit={submit}>
      <TextField label={t('identity.companyName')} name="companyName" maxLength={120} autoComplete="organization" required error={error('companyName')} />
      <TextField label={t('identity.phone')} hint={t('identity.phoneHint')} name="phone" type="tel" maxLength={40} autoComplete="organization-tel" optional />
      <StateAndZone value={place} onChange={setPlace} />
      <TextField label={t('identity.yourName')} name="ownerName" maxLength={120} autoComplete="name" required error={error('ownerName')} />
      <TextField label={t('identity.email')} name="email" type="email" autoComplete="username" required error={error('email')} />
      <PasswordField wrong={isNamed(problem, 'password')} />
      <ProblemNotice problem={problem} />
      <Button type="submit" kind="main" size="crew" busy={busy}>{busy ? t('ui.sending') : t('identity.setUp')}</Button>
    </form>
  );
}
