import { jobs, type Job } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useWrite } from '../../../hooks/useWrite.ts';
import { useText } from '../../../lib/reader.tsx';
import { emptyJob } from '../model/jobDraft.ts';
import { JobFields } from './JobFields.tsx';

export function NewJobForm({ onDone }: { readonly onDone: (job: Job) => void }) {
  const { t, language } = useText();
  const [draft, setDraft] = useState(() => emptyJob(language));
  const { write, busy, problem } = useWrite(jobs.create, { refreshes: [jobs.list], onDone });
  const submit = (event: FormEvent) => {
    event.preventDefault();
    write({ body: draft });
  };
  return (
    <form className="stack-wide" onSubmit={submit}>
      <JobFields value={draft} onChange={setDraft} problem={problem} />
      <ProblemNotice problem={problem} />
      <div><Button type="submit" kind="main" size="crew" busy={busy}>{busy ? t('ui.sending') : t('jobs.new.store')}</Button></div>
    </form>
  );
}
