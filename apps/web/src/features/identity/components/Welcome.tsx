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

/** Taking up an invitation: the link is used only when the button is pressed. */
export function Welcome({ token }: { readonly token: string }) {
  const { t } = useText();
  const entered = useEntered();
  const { write, busy, problem } = useWrite(identity.redeemInvitation, { onDone: (me) => entered(me) });
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    write({ body: { token, password: fieldsOf(event.currentTarget)('password') } });
  };
  return (
    <form className="stack" onSubmit={submit}>
      <PasswordField wrong={isNamed(problem, 'password')} />
      <ProblemNotice problem={problem} />
      <Button type="submit" kind="main" size="crew" busy={busy}>{busy ? t('ui.sending') : t('identity.join')}</Button>
    </form>
  );
}

export function PasswordField({ wrong }: { readonly wrong: boolean }) {
  const { t } = useText();
  return (
    <TextField label={t('identity.newPassword')} hint={t('identity.passwordHint')} name="password" type="password" autoComplete="new-password"
      minLength={12} maxLength={200} required error={wrong ? t('ui.checkField') : undefined} />
  );
}
