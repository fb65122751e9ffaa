import type { Job, LocateTicket } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useCloseTicket, useTicketAct } from '../api/locates.ts';
import { latestAnswers } from '../../../lib/tickets.ts';
import { asksForMarks } from '../model/events.ts';
import { EventForm } from './EventForm.tsx';
import { GiveTimes } from './GiveTimes.tsx';
import { NewTicket } from './NewTicket.tsx';
import { SubmitTicket } from './SubmitTicket.tsx';

interface TicketActsProps {
  /** With what this phone knows of it. */
  readonly ticket: LocateTicket;
  /** Somebody has said on this phone that the marks agree, or what a utility answered. */
  readonly waits: boolean;
  readonly job: Job;
  readonly named: (utility: string) => string;
}

type Open = 'submit' | 'event' | 'given' | 'renew' | 'close' | null;

/** What can be done with a ticket as it stands: hand it in, walk the marks, say what happened, renew, close. */
export function TicketActs({ ticket, waits, job, named }: TicketActsProps) {
  const { t } = useText();
  const [open, setOpen] = useState<Open>(null);
  const shut = () => setOpen(null);
  const { timeZone } = job;
  return (
    <>
      {ticket.draft ? <div><Button kind="main" size="crew" onClick={() => setOpen('submit')}>{t('locates.submit')}</Button></div> : null}
      {asksForMarks(ticket) && !waits ? <MarksAgree ticket={ticket} /> : null}
      <div className="row">
        {ticket.draft ? null : <Button size="crew" onClick={() => setOpen('event')}>{t('locates.happened')}</Button>}
        {ticket.draft ? null : <Button size="crew" onClick={() => setOpen('given')}>{t('locates.given')}</Button>}
        {ticket.draft ? null : <Button size="crew" onClick={() => setOpen('renew')}>{t('locates.renew')}</Button>}
        <Button size="crew" onClick={() => setOpen('close')}>{t('locates.close')}</Button>
      </div>
      <Dialog open={open === 'submit'} title={t('locates.submitTitle')} onClose={shut}><SubmitTicket ticket={ticket} timeZone={timeZone} onDone={shut} /></Dialog>
      <Dialog open={open === 'event'} title={t('locates.happenedTitle')} onClose={shut}><EventForm ticket={ticket} timeZone={timeZone} named={named} onDone={shut} /></Dialog>
      <Dialog open={open === 'given'} title={t('locates.givenTitle')} onClose={shut}><GiveTimes ticket={ticket} timeZone={timeZone} onDone={shut} /></Dialog>
      <Dialog open={open === 'renew'} title={t('locates.renew')} onClose={shut}>
        <p>{t('locates.renewWhy')}</p>
        <NewTicket job={job} asDraft={false} like={{ ...ticket, utilities: latestAnswers(ticket).map(({ utility }) => utility) }} onDone={shut} />
      </Dialog>
      <Dialog open={open === 'close'} title={t('locates.closeAsk', { number: ticket.number })} onClose={shut}><Close ticket={ticket} onDone={shut} /></Dialog>
    </>
  );
}

function MarksAgree({ ticket }: { readonly ticket: LocateTicket }) {
  const { t } = useText();
  const { keep, busy, problem } = useTicketAct(ticket.jobId, ticket.id);
  const body = { kind: 'marksAgree', utility: '', hazard: false, note: '', photoId: null } as const;
  return (
    <div className="stack">
      <p>{t('locates.agreeWhy')}</p>
      <KeepProblem problem={problem} />
      <div><Button kind="main" size="crew" busy={busy} onClick={() => keep({ what: 'event', body: { ...body, at: new Date().toISOString() } })}>{t('locates.agree')}</Button></div>
    </div>
  );
}

function Close({ ticket, onDone }: { readonly ticket: LocateTicket; readonly onDone: () => void }) {
  const { t } = useText();
  const { write, busy, problem } = useCloseTicket();
  return (
    <>
      <p>{t('locates.closeMeans')}</p>
      <ProblemNotice problem={problem} />
      <div className="row">
        <Button kind="danger" size="crew" busy={busy} onClick={() => write({ params: { jobId: ticket.jobId, ticketId: ticket.id }, body: {} }, { onSuccess: onDone })}>{t('locates.closeDo')}</Button>
        <Button kind="text" size="crew" onClick={onDone}>{t('ui.cancel')}</Button>
      </div>
    </>
  );
}
