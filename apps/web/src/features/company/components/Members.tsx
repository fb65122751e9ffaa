import { identity, type Member } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { Table } from '../../../components/Table.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { read } from '../../../lib/query.ts';
import { useText } from '../../../lib/reader.tsx';
import { ChangeMember } from './ChangeMember.tsx';
import { InviteMember } from './InviteMember.tsx';
import { Phones } from './Phones.tsx';

type Open = { readonly kind: 'invite' } | { readonly kind: 'change'; readonly member: Member } | null;

export function Members() {
  const { t } = useText();
  const { may } = useMe();
  const { data, error, isPending } = useQuery(read(identity.members));
  const [open, setOpen] = useState<Open>(null);
  const manages = may('members.manage');
  if (isPending) return <Loading what={t('identity.members.what')} />;
  if (!data) return <ProblemNotice problem={error} />;
  const close = () => setOpen(null);
  const changing = open?.kind === 'change' ? data.data.items.find((m) => m.id === open.member.id) : undefined;
  return (
    <section className="stack" aria-labelledby="members">
      <Heading id="members">{t('identity.members')}</Heading>
      <Table caption={t('identity.members')} captionUnseen stacks columns={columns(t, manages)}
        rows={data.data.items.map((member) => row(member, t, manages ? () => setOpen({ kind: 'change', member }) : null))} />
      {manages ? <div><Button kind="main" onClick={() => setOpen({ kind: 'invite' })}>{t('identity.invite')}</Button></div> : null}
      {may('devices.manage') ? <Phones /> : null}
      <Dialog open={open?.kind === 'invite'} title={t('identity.invite')} onClose={close}><InviteMember /></Dialog>
      <Dialog open={changing !== undefined} title={t('identity.member.changeOf', { name: changing?.name ?? '' })} onClose={close}>
        {changing ? <ChangeMember member={changing} onDone={close} /> : null}
      </Dialog>
    </section>
  );
}

type T = ReturnType<typeof useText>['t'];

function columns(t: T, manages: boolean) {
  const shown = [
    { key: 'name', head: t('identity.member.name') },
    { key: 'email', head: t('identity.email') },
    { key: 'roles', head: t('identity.member.roles') },
    { key: 'state', head: t('identity.member.state') },
  ];
  return manages ? [...shown, { key: 'change', head: <span className="unseen">{t('identity.member.change')}</span> }] : shown;
}

function row(member: Member, t: T, change: (() => void) | null) {
  const state = !member.active ? 'closed' : member.invited ? 'invited' : 'active';
  return {
    key: member.id,
    cells: {
      name: member.name,
      email: member.email,
      roles: member.roles.map((role) => t(`identity.role.${role}`)).join(', '),
      state: t(`identity.member.${state}`),
      change: change ? <Button kind="text" aria-label={t('identity.member.changeOf', { name: member.name })} onClick={change}>{t('identity.member.change')}</Button> : null,
    },
  };
}
