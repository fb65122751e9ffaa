import type { Job } from '@yardfall/contracts';
import { Heading } from '../../../components/Heading.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { useOutbox } from '../../../hooks/useOutbox.ts';
import { useText } from '../../../lib/reader.tsx';
import { useFound } from '../api/found.ts';
import { OneReport } from './OneReport.tsx';
import './found.css';

/** What the crew found, and the answers; the way to report stands at the top of the job. */
export function FoundSection({ job }: { readonly job: Job }) {
  const { t } = useText();
  const { data, error } = useFound(job.id);
  const waiting = useOutbox().filter((entry) => entry.kind === 'found' && entry.jobId === job.id && entry.refused === null).length;
  const items = data?.data.items ?? [];
  return (
    <div className="stack">
      <ProblemNotice problem={error} />
      {waiting > 0 ? <Notice severity="stop"><p>{t('found.here', { n: waiting })}</p></Notice> : null}
      {items.length > 0 ? (
        <>
          <Heading level={3}>{t('found.title')}</Heading>
          {items.map((report) => <OneReport key={report.id} report={report} timeZone={job.timeZone} />)}
        </>
      ) : null}
    </div>
  );
}
