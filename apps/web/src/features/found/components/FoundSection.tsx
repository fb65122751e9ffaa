import type { Job } from '@yardfall/contracts';
import { Heading } from '../../../components/Heading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useFound } from '../api/found.ts';
import { OneReport } from './OneReport.tsx';
import './found.css';

/** What the crew found, and the answers; that work is stopped, and the way to stop it, stand at the top of the job. */
export function FoundSection({ job }: { readonly job: Job }) {
  const { t } = useText();
  const { data, error } = useFound(job.id);
  const items = data?.data.items ?? [];
  return (
    <div className="stack">
      <ProblemNotice problem={error} />
      {items.length > 0 ? (
        <>
          <Heading level={3}>{t('found.title')}</Heading>
          {items.map((report) => <OneReport key={report.id} report={report} timeZone={job.timeZone} />)}
        </>
      ) : null}
    </div>
  );
}
