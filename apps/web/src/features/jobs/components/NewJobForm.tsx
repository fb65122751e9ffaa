import { jobs, type Job, type Me } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useWrite } from '../../../hooks/useWrite.ts';
import { useText } from '../../../lib/reader.tsx';
import { emptyJob } from '../model/jobDraft.ts';
import { JobFields } from './JobFields.tsx';

interface NewJobFormProps {
  readonly company: Me['company'];
  readonly onDone: (job: Job) => void;
}

export function NewJobForm({ company, onDone }: NewJobFormProps) {
  const { t } = useText();
  const [draft, setDraft] = useState(() => emptyJob(company));
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
