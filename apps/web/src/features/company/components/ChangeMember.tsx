import { identity, type Member } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useWrite } from '../../../hooks/useWrite.ts';
import { useText } from '../../../lib/reader.tsx';
import { RoleChecks } from './RoleChecks.tsx';

export function ChangeMember({ member, onDone }: { readonly member: Member; readonly onDone: () => void }) {
  const { t } = useText();
  const [roles, setRoles] = useState([...member.roles]);
  const { write, busy, problem } = useWrite(identity.updateMember, { refreshes: [identity.members, identity.me], onDone });
  const params = { memberId: member.id };
  return (
    <div className="stack">
      <RoleChecks roles={roles} onChange={setRoles} />
      {roles.length === 0 ? <p className="field-error" role="alert">{t('identity.invite.needRole')}</p> : null}
      <div><Button kind="main" busy={busy} disabled={busy || roles.length === 0} onClick={() => write({ params, body: { roles } })}>{t('identity.member.store')}</Button></div>
      <p className="faint">{t('identity.member.closeHint')}</p>
      <div>
        <Button kind={member.active ? 'danger' : 'plain'} busy={busy} onClick={() => write({ params, body: { active: !member.active } })}>
          {t(member.active ? 'identity.member.close' : 'identity.member.reopen')}
        </Button>
      </div>
      <ProblemNotice problem={problem} />
    </div>
  );
}
