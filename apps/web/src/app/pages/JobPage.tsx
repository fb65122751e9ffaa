import { jobs } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useEffect, useState } from 'react';
import { Button } from '../../components/Button.tsx';
import { Loading } from '../../components/Loading.tsx';
import { ProblemNotice } from '../../components/Notice.tsx';
import { Page } from '../../components/Page.tsx';
import { Stopped } from '../../features/found/stop.ts';
import { JobBlock } from '../../features/jobs/index.ts';
import { useHashScroll } from '../../hooks/useHashScroll.ts';
import { useMe } from '../../hooks/useMe.ts';
import { read } from '../../lib/query.ts';
import { useText } from '../../lib/reader.tsx';
import { headingCode, jobHeadings, jobSections, SectionOnTop, type JobSectionProps } from '../jobSections.tsx';
import { CrewTop } from '../sections/CrewTop.tsx';
import { PartStanding } from '../PartStanding.tsx';
import { partsOpenAt } from '../openParts.ts';
import { Fetched, JobPart } from './JobPart.tsx';
import './JobPage.css';

/** The record of one job: the section on top, the parts of the record below it as plain headings. */
export function JobPage() {
  const { t } = useText();
  const { jobId } = useParams({ from: '/member/jobs/$jobId' });
  const { data, error, isPending, refetch } = useQuery(read(jobs.read, { params: { jobId } }));
  const { may } = useMe();
  useHashScroll(data !== undefined);
  if (isPending) return <Loading what={t('jobs.one')} />;
  if (!data) return <ProblemNotice problem={error} action={<Button onClick={() => void refetch()}>{t('ui.tryAgain')}</Button>} />;
  return (
    <Page title={data.data.title}>
      {may('findings.read') ? <Stopped jobId={jobId} timeZone={data.data.timeZone} /> : null}
      <JobBlock job={data.data} />
      {may('checklists.record') ? <Fetched><CrewTop job={data.data} /></Fetched> : null}
      {SectionOnTop ? <Fetched><SectionOnTop job={data.data} etag={data.etag} /></Fetched> : null}
      <Record key={jobId} job={data.data} etag={data.etag} />
    </Page>
  );
}

function Record(props: JobSectionProps) {
  const { t } = useText();
  const { me, may } = useMe();
  const [{ order, open: opened }] = useState(() => partsOpenAt(props.job.stage, location.hash, me?.roles ?? [], jobHeadings));
  const [open, setOpen] = useState(opened);
  // A link within the page opens the part that it leads to.
  useEffect(() => {
    const show = () => setOpen((before) => new Set([...before, decodeURIComponent(location.hash.slice(1))]));
    addEventListener('hashchange', show);
    return () => removeEventListener('hashchange', show);
  }, []);
  const shown = order.flatMap((id) => {
    const section = jobSections[id];
    return section && may(section.permission) ? [{ id, Body: section.Body }] : [];
  });
  const all = shown.every(({ id }) => open.has(id));
  const toggle = (id: string) => setOpen((before) => new Set(before.has(id) ? [...before].filter((other) => other !== id) : [...before, id]));
  return (
    <div className="job-record">
      <nav className="job-index no-print" aria-label={t('jobs.index')}>
        <ul>
          {shown.map(({ id }) => <li key={id}><a href={`#${id}`} onClick={() => setOpen((before) => new Set([...before, id]))}>{t(headingCode(id))}</a></li>)}
          <li><Button kind="text" onClick={() => setOpen(new Set(all ? [] : shown.map(({ id }) => id)))}>{t(all ? 'jobs.closeAll' : 'jobs.openAll')}</Button></li>
        </ul>
      </nav>
      <div className="job-parts">
        {shown.map(({ id, Body }) => (
          <JobPart key={id} id={id} title={t(headingCode(id))} open={open.has(id)} onToggle={() => toggle(id)} standing={<PartStanding id={id} job={props.job} />}><Body {...props} /></JobPart>
        ))}
      </div>
    </div>
  );
}
