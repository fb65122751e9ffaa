import { LocateAnswer } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Choices } from '../../../components/Choices.tsx';
import { TextField } from '../../../components/Field.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { PhotoField } from '../../../components/PhotoField.tsx';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';
import type { Response } from '../../../lib/tickets.ts';
import { useTicketAct } from '../api/locates.ts';

interface AnswerFormProps {
  readonly params: { readonly jobId: string; readonly ticketId: string };
  readonly timeZone: string;
  readonly response: Response;
  readonly onDone: () => void;
}

const answers = LocateAnswer.options.filter((answer) => answer !== 'none');

/** What one utility answered, in our words; the center's own code stands beside it as it wrote it. */
export function AnswerForm({ params, timeZone, response, onDone }: AnswerFormProps) {
  const { t } = useText();
  const [answer, setAnswer] = useState<Response['answer'] | null>(null);
  const { keep, busy, problem } = useTicketAct(params.jobId, params.ticketId, onDone);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const field = fieldsOf(event.currentTarget);
    if (answer !== null) keep({ what: 'answer', body: { utility: response.utility, answer, code: field('code'), note: field('note'), photoId: field('photoId') || null } });
  };
  return (
    <form className="stack crew-form" onSubmit={submit}>
      <Choices look="crew" label={t('locates.answerSaid')} value={answer} onChange={setAnswer} choices={answers.map((value) => ({ value, label: t(`locates.answer.${value}`) }))} />
      <TextField label={t('locates.code')} name="code" maxLength={60} optional autoComplete="off" />
      <TextField label={t('locates.note')} hint={t('locates.noteHint')} name="note" maxLength={500} optional autoComplete="off" />
      {answer === 'marked' ? <PhotoField jobId={params.jobId} timeZone={timeZone} label={t('locates.photo')} note={t('locates.photoOf', { utility: response.utility })} /> : null}
      <KeepProblem problem={problem} />
      <Button type="submit" kind="main" size="crew" wide disabled={answer === null || busy} busy={busy}>{t('locates.recordAnswer')}</Button>
    </form>
  );
}
