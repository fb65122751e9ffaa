import { jobs } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { Suspense } from 'react';
import { Button } from '../../components/Button.tsx';
import { ErrorBoundary } from '../../components/ErrorBoundary.tsx';
import { Heading } from '../../components/Heading.tsx';
import { Loading } from '../../components/Loading.tsx';
import { ProblemNotice } from '../../components/Notice.tsx';
import { Page } from '../../components/Page.tsx';
import { JobBlock } from '../../features/jobs/index.ts';
import { useHashScroll } from '../../hooks/useHashScroll.ts';
import { useMe } from '../../hooks/useMe.ts';
import { read } from '../../lib/query.ts';
import { useText } from '../../lib/reader.tsx';
import { headingCode, jobHeadings, jobSections, SectionOnTop } from '../jobSections.tsx';
import './JobPage.css';

/** The record of one job: the section on top, the parts of the record below it as plain headings. */
export function JobPage() {
  const { t } = useText();
  const { may } = useMe();
  const { jobId } = useParams({ from: '/member/jobs/$jobId' });
  const { data, error, isPending, refetch } = useQuery(read(jobs.read, { params: { jobId } }));
  useHashScroll(data !== undefined);
  if (isPending) return <Loading what={t('jobs.one')} />;
  if (!data) return <ProblemNotice problem={error} action={<Button onClick={() => void refetch()}>{t('ui.tryAgain')}</Button>} />;
  const props = { job: data.data, etag: data.etag };
  const shown = jobHeadings.flatMap((id) => {
    const section = jobSections[id];
    return section && may(section.permission) ? [{ id, Body: section.Body }] : [];
  });
  return (
    <Page title={data.data.title}>
      <JobBlock job={data.data} />
      {SectionOnTop ? <Part><SectionOnTop {...props} /></Part> : null}
      <div className="job-record">
        <nav className="job-index no-print" aria-label={t('jobs.index')}>
          <ul>{shown.map(({ id }) => <li key={id}><a href={`#${id}`}>{t(headingCode(id))}</a></li>)}</ul>
        </nav>
        <div className="stack-wide">
          {shown.map(({ id, Body }) => (
            <section key={id} className="stack" aria-labelledby={id}>
              <Heading id={id}>{t(headingCode(id))}</Heading>
              <Part><Body {...props} /></Part>
            </section>
          ))}
        </div>
      </div>
    </Page>
  );
}

function Part({ children }: { readonly children: React.ReactNode }) {
  const { t } = useText();
  return <ErrorBoundary><Suspense fallback={<Loading what={t('ui.part')} />}>{children}</Suspense></ErrorBoundary>;
}
