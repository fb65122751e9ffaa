import { jobs } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../components/Button.tsx';
import { Loading } from '../../components/Loading.tsx';
import { ProblemNotice } from '../../components/Notice.tsx';
import { Page } from '../../components/Page.tsx';
import { NextItem } from '../../features/checklists/index.ts';
import { HeldBy, OnTheTable, OnThisJob } from '../../features/jobs/index.ts';
import { useMe } from '../../hooks/useMe.ts';
import { usePages } from '../../hooks/usePages.ts';
import { useText } from '../../lib/reader.tsx';

/** One home with the parts that apply: in a small firm the owner also estimates and digs. */
export function HomePage() {
  const { t } = useText();
  const { me } = useMe();
  const [now] = useState(() => Date.now());
  const list = usePages(jobs.list, { query: { open: 'true', limit: 100 } });
  if (!me) return null;
  return (
    <Page title={t('jobs.home')}>
      {list.pending ? <Loading what={t('jobs.what')} /> : null}
      <ProblemNotice problem={list.problem} action={<Button onClick={list.again}>{t('ui.tryAgain')}</Button>} />
      {list.pending || list.problem ? null : (
        <>
          {me.roles.includes('crew') ? <OnThisJob jobs={list.items} memberId={me.id} next={({ id }) => <NextItem jobId={id} />} /> : null}
          {me.roles.includes('owner') ? <HeldBy jobs={list.items} now={now} /> : null}
          {me.roles.includes('estimator') ? <OnTheTable jobs={list.items} now={now} /> : null}
        </>
      )}
      {list.more ? <div><Button onClick={list.more}>{t('ui.more')}</Button></div> : null}
    </Page>
  );
}
