import { jobs, type JobRow } from '@yardfall/contracts';
import { lazy, useState } from 'react';
import { Button } from '../../components/Button.tsx';
import { Loading } from '../../components/Loading.tsx';
import { ProblemNotice } from '../../components/Notice.tsx';
import { Page } from '../../components/Page.tsx';
import { NextItem } from '../../features/checklists/next.ts';
import { LineHit, StopButton, Stopped } from '../../features/found/stop.ts';
import { HeldBy, OnTheTable, OnThisJob } from '../../features/jobs/home.ts';
import { useRest } from '../../hooks/useRest.ts';
import { useMe } from '../../hooks/useMe.ts';
import { useMinute } from '../../hooks/useMinute.ts';
import { usePages } from '../../hooks/usePages.ts';
import { crewDay } from '../../lib/crewDay.ts';
import { openJobs } from '../../lib/openJobs.ts';
import { useText } from '../../lib/reader.tsx';
import { Fetched } from './JobPart.tsx';

/** Not on the way to the next step: the drawing brings its own code and the design, and is drawn when the phone has a moment. */
const HomeDrawing = lazy(() => import('../sections/HomeDrawing.tsx').then((one) => ({ default: one.HomeDrawing })));
const HomeClock = lazy(() => import('../sections/HomeClock.tsx').then((one) => ({ default: one.HomeClock })));

const isStopped = ({ holds }: JobRow) => holds.some(({ code }) => code === 'found.hold.open');

/** One home with the parts that apply: in a small firm the owner also estimates and digs. */
export function HomePage() {
  const { t } = useText();
  const { me } = useMe();
  const now = useMinute();
  const list = usePages(jobs.list, { query: openJobs });
  if (!me) return null;
  return (
    <Page title={t('jobs.home')}>
      {list.pending ? <Loading what={t('jobs.what')} /> : null}
      <ProblemNotice problem={list.problem} action={<Button onClick={list.again}>{t('ui.tryAgain')}</Button>} />
      {list.pending || list.problem ? null : (
        <>
          {me.roles.includes('crew') ? <CrewHome jobs={list.items} memberId={me.id} /> : null}
          {me.roles.includes('owner') ? <HeldBy jobs={list.items} now={now} /> : null}
          {me.roles.includes('estimator') ? <OnTheTable jobs={list.items} now={now} /> : null}
        </>
      )}
      {list.more ? <div><Button onClick={list.more}>{t('ui.more')}</Button></div> : null}
    </Page>
  );
}

function CrewHome({ jobs: items, memberId }: { readonly jobs: readonly JobRow[]; readonly memberId: string }) {
  const [shown, setShown] = useState(false);
  const rested = useRest(shown);
  const stopped = crewDay(items, memberId).filter((job, at) => at === 0 || isStopped(job));
  return (
    <>
      {stopped.map(({ id, title, timeZone }) => <Stopped key={id} jobId={id} timeZone={timeZone} job={title} />)}
      <OnThisJob jobs={items} memberId={memberId} next={({ id }) => <NextItem jobId={id} onShown={() => setShown(true)} />}
        section={(job) => (job.buildRevisionId === null ? null : <div className="home-drawing">{rested ? <Fetched><HomeDrawing job={job} /></Fetched> : null}</div>)}
        stops={({ id, timeZone }) => <><StopButton jobId={id} timeZone={timeZone} /><LineHit jobId={id} timeZone={timeZone} /></>}
        clock={({ id }) => <div className="home-clock">{rested ? <Fetched><HomeClock jobId={id} /></Fetched> : null}</div>} />
    </>
  );
}
