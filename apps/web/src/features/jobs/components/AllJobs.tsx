import type { JobRow } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { Empty } from '../../../components/Empty.tsx';
import { TextField } from '../../../components/Field.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { JobLine } from './JobLine.tsx';

interface AllJobsProps {
  readonly list: { readonly items: readonly JobRow[]; readonly pending: boolean; readonly problem: unknown; readonly more: (() => void) | null; readonly again: () => void };
  readonly words: string;
  readonly onWords: (words: string) => void;
}

/** The newest first, each with where it stands and what holds it. */
export function AllJobs({ list, words, onWords }: AllJobsProps) {
  const { t, say } = useText();
  const { items, pending, problem, more, again } = list;
  return (
    <div className="stack">
      <div className="measure"><TextField label={t('jobs.find')} hint={t('jobs.find.hint')} type="search" value={words} maxLength={120} autoComplete="off" onChange={(e) => onWords(e.target.value)} /></div>
      {pending ? <Loading what={t('jobs.what')} /> : null}
      <ProblemNotice problem={problem} action={<Button onClick={again}>{t('ui.tryAgain')}</Button>} />
      {!pending && !problem && items.length === 0 ? <Empty what={t(words.trim() === '' ? 'jobs.all.empty' : 'jobs.find.none')} why={t(words.trim() === '' ? 'jobs.onTheTable.why' : 'jobs.find.hint')} /> : null}
      <ul aria-label={t('jobs.all')}>
        {items.map((job) => {
          const [hold] = job.holds;
          return <JobLine key={job.id} job={job} says={t('jobs.standsAt', { stage: `jobs.stage.${job.stage}`, says: hold ? say(hold.code, hold.params, { timeZone: job.timeZone }) : t(`jobs.next.${job.stage}`) })} />;
        })}
      </ul>
      {more ? <div><Button onClick={more}>{t('ui.more')}</Button></div> : null}
    </div>
  );
}
