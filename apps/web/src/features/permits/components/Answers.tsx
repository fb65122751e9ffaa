import { type Job, type OutletQuestion, outletQuestions, type Permit } from '@yardfall/contracts';
import { useKeepAnswers } from '../../../hooks/useKeepAnswers.ts';
import { AnswerFields } from './AnswerFields.tsx';

interface PermitAnswerProps {
  readonly job: Job;
  readonly kind: Permit['kind'];
  readonly onDone: () => void;
}

export function PermitAnswerForm({ job, kind, onDone }: PermitAnswerProps) {
  const { keep, busy, problem } = useKeepAnswers(job.id, onDone);
  return <AnswerFields job={job} about={`permits.kind.${kind}`} busy={busy} problem={problem} onAnswer={(said) => keep([{ what: 'permit', said: { kind, ...said } }])} />;
}

interface OutletAnswerProps {
  readonly job: Job;
  readonly revisionId: string;
  readonly outlet: string;
  readonly question: OutletQuestion['question'];
  readonly onDone: () => void;
}

export function OutletAnswer({ job, revisionId, outlet, question, onDone }: OutletAnswerProps) {
  const { keep, busy, problem } = useKeepAnswers(job.id, onDone);
  return <AnswerFields job={job} about={`designs.question.${outletQuestions[question]}`} busy={busy} problem={problem} onAnswer={(said) => keep([{ what: 'outlet', said: { revisionId, outlet, question, ...said } }])} />;
}
