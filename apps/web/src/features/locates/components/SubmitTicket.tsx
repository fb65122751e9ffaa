import type { LocateTicket } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';
import { instantIn } from '../../../lib/zoneTime.ts';
import { useSubmitTicket } from '../api/locates.ts';
import { givenIn } from '../model/given.ts';
import { GivenByCenter } from './GivenByCenter.tsx';

/** The center took a prepared ticket: from its time on the clock is counted. */
export function SubmitTicket({ ticket, timeZone, onDone }: { readonly ticket: LocateTicket; readonly timeZone: string; readonly onDone: () => void }) {
  const { t } = useText();
  const [lacks, setLacks] = useState<'time' | 'span' | null>(null);
  const { write, busy, problem } = useSubmitTicket(onDone);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const field = fieldsOf(event.currentTarget);
    const requestedAt = instantIn(timeZone, field('requestedAt').slice(0, 16));
    const given = givenIn(timeZone, field);
    setLacks(requestedAt === null ? 'time' : given === null ? 'span' : null);
    if (requestedAt !== null && given !== null) write({ params: { jobId: ticket.jobId, ticketId: ticket.id }, body: { number: field('number'), requestedAt, given } });
  };
  return (
    <form className="stack crew-form" onSubmit={submit}>
      <GivenByCenter job={{ timeZone }} noTime={lacks === 'time'} noSpan={lacks === 'span'} />
      <ProblemNotice problem={problem} />
      <Button type="submit" kind="main" size="crew" wide busy={busy}>{t('locates.submitDo')}</Button>
    </form>
  );
}
