import type { LocateTicket } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { TextArea } from '../../../components/Field.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { fieldsOf } from '../../../lib/form.ts';
import { ApiProblem } from '../../../lib/problem.ts';
import { useText } from '../../../lib/reader.tsx';
import { givenOf } from '../../../lib/tickets.ts';
import { wallClockIn } from '../../../lib/zoneTime.ts';
import { useGiveTimes } from '../api/locates.ts';
import { givenIn } from '../model/given.ts';
import { GivenSpan } from './GivenByCenter.tsx';

interface GiveTimesProps {
  readonly ticket: LocateTicket;
  readonly timeZone: string;
  readonly onDone: () => void;
}

/** Start and end as the center wrote them, entered or put right; what lets dig earlier or longer than before names its reason. */
export function GiveTimes({ ticket, timeZone, onDone }: GiveTimesProps) {
  const { t } = useText();
  const [noSpan, setNoSpan] = useState(false);
  const { write, busy, problem } = useGiveTimes(onDone);
  const last = givenOf(ticket).at(-1);
  const shown = (moment: string | null | undefined) => (moment == null ? '' : wallClockIn(timeZone, new Date(moment)));
  const wantsWhy = problem instanceof ApiProblem && problem.issues.some(({ path }) => path === 'body.note');
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const field = fieldsOf(event.currentTarget);
    const given = givenIn(timeZone, field);
    setNoSpan(given === null);
    if (given !== null) write({ params: { jobId: ticket.jobId, ticketId: ticket.id }, body: { ...given, note: field('note') } });
  };
  return (
    <form className="stack crew-form" onSubmit={submit}>
      <p>{t('locates.givenWhy')}</p>
      <GivenSpan noSpan={noSpan} before={{ startAt: shown(last?.startAt), expiresAt: shown(last?.expiresAt) }} />
      {last !== undefined || wantsWhy ? <TextArea label={t('locates.givenNote')} name="note" maxLength={500} rows={2} required error={wantsWhy ? t('locates.givenNoteNeeded') : undefined} /> : null}
      {wantsWhy ? null : <ProblemNotice problem={problem} />}
      <Button type="submit" kind="main" size="crew" wide busy={busy}>{t('locates.givenDo')}</Button>
    </form>
  );
}
