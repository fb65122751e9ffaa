import { identity, type MemberRole } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { TextField } from '../../../components/Field.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useWrite } from '../../../hooks/useWrite.ts';
import { fieldsOf } from '../../../lib/form.ts';
import { isNamed } from '../../../lib/issues.ts';
import { useText } from '../../../lib/reader.tsx';
import { RoleChecks } from './RoleChecks.tsx';

export function InviteMember() {
  const { t } = useText();
  const [roles, setRoles] = useState<MemberRole[]>(['crew']);
  const { write, busy, problem, answer } = useWrite(identity.invite, { refreshes: [identity.members] });
  if (answer) return <InvitationLink name={answer.member.name} link={answer.link} until={answer.expiresAt} />;
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const field = fieldsOf(event.currentTarget);
    if (roles.length > 0) write({ body: { name: field('name'), email: field('email'), roles } });
  };
  return (
    <form className="stack" onSubmit={submit}>
      <TextField label={t('identity.member.name')} name="name" maxLength={120} required error={isNamed(problem, 'name') ? t('ui.checkField') : undefined} />
      <TextField label={t('identity.email')} name="email" type="email" required error={isNamed(problem, 'email') ? t('ui.checkField') : undefined} />
      <RoleChecks roles={roles} onChange={setRoles} />
      {roles.length === 0 ? <p className="field-error" role="alert">{t('identity.invite.needRole')}</p> : null}
      <ProblemNotice problem={problem} />
      <Button type="submit" kind="main" busy={busy}>{busy ? t('ui.sending') : t('identity.invite.send')}</Button>
    </form>
  );
}

function InvitationLink({ name, link, until }: { readonly name: string; readonly link: string; readonly until: string }) {
  const { t } = useText();
  const [copied, setCopied] = useState(false);
  const copy = async () => {
    await navigator.clipboard.writeText(link);
    setCopied(true);
  };
  return (
    <div className="stack">
      <p>{t('identity.invite.link', { name, until })}</p>
      <input className="control" readOnly value={link} aria-label={t('identity.invite.copy')} onFocus={(event) => event.target.select()} />
      {'clipboard' in navigator ? <div><Button onClick={() => void copy()}>{copied ? t('identity.invite.copied') : t('identity.invite.copy')}</Button></div> : null}
    </div>
  );
}
