import { identity, type SignedIn } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { Table } from '../../../components/Table.tsx';
import { useWrite } from '../../../hooks/useWrite.ts';
import { read } from '../../../lib/query.ts';
import { useText } from '../../../lib/reader.tsx';
import { deviceName } from '../model/deviceName.ts';

/** Who is signed in on what; a lost phone is cut off here. */
export function Phones() {
  const { t, q } = useText();
  const { data, error } = useQuery(read(identity.phones));
  const [lost, setLost] = useState<SignedIn | null>(null);
  const { write, busy, problem } = useWrite(identity.cutOffPhone, { refreshes: [identity.phones], onDone: () => setLost(null) });
  const rows = (data?.data.items ?? []).map((one) => ({
    key: one.id,
    cells: {
      who: one.name, what: deviceName(one.userAgent) ?? t('identity.phones.unknown'), since: q('dateTime', one.createdAt),
      cut: one.own ? t('identity.phones.own') : one.cutOffAt === null ? <Button kind="text" aria-label={t('identity.phones.cutOffOf', { name: one.name })} onClick={() => setLost(one)}>{t('identity.phones.cutOff')}</Button> : t('identity.phones.isCutOff', { at: one.cutOffAt }),
    },
  }));
  return (
    <>
      <Heading level={3}>{t('identity.phones')}</Heading>
      <ProblemNotice problem={error} />
      <Table caption={t('identity.phones')} captionUnseen stacks="labelled" rows={rows}
        columns={[{ key: 'who', head: t('identity.member.name') }, { key: 'what', head: t('identity.phones.what') }, { key: 'since', head: t('identity.phones.since') }, { key: 'cut', head: '' }]} />
      <Dialog open={lost !== null} title={t('identity.phones.cutOffOf', { name: lost?.name ?? '' })} onClose={() => setLost(null)}>
        <div className="stack">
          <p>{t('identity.phones.cutOffWhy')}</p>
          <ProblemNotice problem={problem} />
          <Button kind="danger" busy={busy} onClick={() => { if (lost !== null) write({ params: { sessionId: lost.id }, body: {} }); }}>{t('identity.phones.cutOff')}</Button>
        </div>
      </Dialog>
    </>
  );
}
