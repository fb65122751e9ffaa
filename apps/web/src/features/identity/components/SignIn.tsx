import { identity } from '@yardfall/contracts';
import type { FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { TextField } from '../../../components/Field.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useWrite } from '../../../hooks/useWrite.ts';
import { fieldsOf } from '../../../lib/form.ts';
import { isNamed } from '../../../lib/issues.ts';
import { useText } from '../../../lib/reader.tsx';
import { useEntered } from '../api/useEntered.ts';

export function SignIn({ from }: { readonly from?: string | undefined }) {
  const { t } = useText();
  const entered = useEntered();
  const { write, busy, problem } = useWrite(identity.signIn, { onDone: (me) => entered(me, from) });
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const fields = fieldsOf(event.currentTarget);
    write({ body: { email: fields('email'), password: fields('password') } });
  };
  return (
    <form className="stack" onSubmit={submit}>
      <TextField label={t('identity.email')} name="email" type="email" autoComplete="username" required error={isNamed(problem, 'email') ? t('ui.checkField') : undefined} />
      <TextField label={t('identity.password')} name="password" type="password" autoComplete="current-password" required />
      <ProblemNotice problem={problem} />
      <Button type="submit" kind="main" size="crew" busy={busy}>{busy ? t('ui.sending') : t('identity.signIn')}</Button>
    </form>
  );
}
