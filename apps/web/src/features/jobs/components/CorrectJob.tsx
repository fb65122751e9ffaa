import { jobs, type Job } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useWrite } from '../../../hooks/useWrite.ts';
import { useText } from '../../../lib/reader.tsx';
import { inputOf } from '../model/jobDraft.ts';
import { JobFields } from './JobFields.tsx';

interface CorrectJobProps {
  readonly job: Job;
  readonly etag: string | null;
  readonly onDone: () => void;
}

export function CorrectJob({ job, etag, onDone }: CorrectJobProps) {
  const { t } = useText();
  const [draft, setDraft] = useState(() => inputOf(job));
  // The version that was on screen when the correction began, not the newest one.
  const [seen] = useState(etag);
  const { write, busy, problem } = useWrite(jobs.update, { refreshes: [jobs.read, jobs.list], onDone });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    write({ params: { jobId: job.id }, body: draft, ...(seen === null ? {} : { ifMatch: seen }) });
  };
  return (
    <form className="stack" onSubmit={submit}>
      <JobFields value={draft} onChange={setDraft} problem={problem} />
      <ProblemNotice problem={problem} />
      <div><Button type="submit" kind="main" busy={busy}>{busy ? t('ui.sending') : t('jobs.correct.store')}</Button></div>
    </form>
  );
}
