import type { Job } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useOutbox } from '../../../hooks/useOutbox.ts';
import { useText } from '../../../lib/reader.tsx';
import { useFound } from '../api/found.ts';
import { OneReport } from './OneReport.tsx';
import { StopWork } from './StopWork.tsx';
import './found.css';

/** "Stop work: we found ...", what was found before, and the answers. */
export function FoundSection({ job }: { readonly job: Job }) {
  const { t } = useText();
  const { may } = useMe();
  const { data, error } = useFound(job.id);
  const waiting = useOutbox().filter((entry) => entry.kind === 'found' && entry.jobId === job.id && entry.refused === null).length;
  const [open, setOpen] = useState(false);
  const items = data?.data.items ?? [];
  return (
    <div className="stack">
      {may('findings.report') ? <Button kind="danger" size="crew" wide onClick={() => setOpen(true)}>{t('found.stop')}</Button> : null}
      <ProblemNotice problem={error} />
      {waiting > 0 ? <Notice severity="stop"><p>{t('found.here', { n: waiting })}</p></Notice> : null}
      {items.length > 0 ? (
        <>
          <Heading level={3}>{t('found.title')}</Heading>
          {items.map((report) => <OneReport key={report.id} report={report} timeZone={job.timeZone} />)}
        </>
      ) : null}
      <Dialog open={open} title={t('found.stop')} onClose={() => setOpen(false)}>
        <StopWork jobId={job.id} onDone={() => setOpen(false)} />
      </Dialog>
    </div>
  );
}
