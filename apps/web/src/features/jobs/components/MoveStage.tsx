import { jobs, type Job } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { TextArea } from '../../../components/Field.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useWrite } from '../../../hooks/useWrite.ts';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';

type Move = 'visit' | 'design' | 'referred' | 'declined';

/** What can be said of a job by hand; every other stage follows from the work itself. */
function movesFrom(stage: Job['stage']): readonly Move[] {
  if (stage === 'intake') return ['visit', 'referred', 'declined'];
  if (stage === 'referred' || stage === 'declined') return ['design'];
  return stage === 'visit' || stage === 'design' || stage === 'pricing' ? ['referred', 'declined'] : [];
}

export function MoveStage({ job }: { readonly job: Job }) {
  const { t } = useText();
  const [asked, setAsked] = useState<Move | null>(null);
  const { write, busy, problem, forget } = useWrite(jobs.moveStage, { refreshes: [jobs.read, jobs.list], onDone: () => setAsked(null) });
  const move = (stage: Move, reason: string) => write({ params: { jobId: job.id }, body: { stage, reason } });
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    if (asked) move(asked, fieldsOf(event.currentTarget)('reason'));
  };
  const press = (stage: Move) => {
    forget();
    if (stage === 'visit') move(stage, '');
    else setAsked(stage);
  };
  return (
    <div className="stack">
      <div className="row">
        {movesFrom(job.stage).map((stage) => <Button key={stage} kind={stage === 'visit' ? 'main' : 'plain'} busy={busy} onClick={() => press(stage)}>{t(`jobs.move.${stage}`)}</Button>)}
      </div>
      {asked === null ? <ProblemNotice problem={problem} /> : null}
      <Dialog open={asked !== null} title={asked ? t(`jobs.move.${asked}`) : ''} onClose={() => setAsked(null)}>
        <form className="stack" onSubmit={submit}>
          <TextArea label={t('jobs.move.reason')} name="reason" maxLength={500} required />
          <ProblemNotice problem={problem} />
          <div><Button type="submit" kind="main" busy={busy}>{asked ? t(`jobs.move.${asked}`) : ''}</Button></div>
        </form>
      </Dialog>
    </div>
  );
}
