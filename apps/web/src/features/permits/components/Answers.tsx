import { type Job, type OutletQuestion, outletQuestions, type Permit } from '@yardfall/contracts';
import { useAnswerOutlet, useAnswerPermits } from '../api/permits.ts';
import { AnswerFields } from './AnswerFields.tsx';

interface PermitAnswerProps {
  readonly job: Job;
  readonly kind: Permit['kind'];
  readonly onDone: () => void;
}

export function PermitAnswerForm({ job, kind, onDone }: PermitAnswerProps) {
  const { write, busy, problem } = useAnswerPermits(onDone);
  return <AnswerFields job={job} about={`permits.kind.${kind}`} busy={busy} problem={problem} onAnswer={(said) => write({ params: { jobId: job.id }, body: { answers: [{ kind, ...said }] } })} />;
}

interface OutletAnswerProps {
  readonly job: Job;
  readonly revisionId: string;
  readonly outlet: string;
  readonly question: OutletQuestion['question'];
  readonly onDone: () => void;
}

export function OutletAnswer({ job, revisionId, outlet, question, onDone }: OutletAnswerProps) {
  const { write, busy, problem } = useAnswerOutlet(onDone);
  return <AnswerFields job={job} about={`designs.question.${outletQuestions[question]}`} busy={busy} problem={problem} onAnswer={(said) => write({ params: { jobId: job.id }, body: { revisionId, outlet, question, ...said } })} />;
}
