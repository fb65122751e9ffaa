import type { DesignDocument } from '@yardfall/calc';
import type { Job, LocateTicket } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { Photo } from '../../../components/Photo.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';
import type { OutboxLocate } from '../../../lib/outbox.ts';
import { latestAnswers, type Response } from '../../../lib/tickets.ts';
import { drawnOf, isAnswered, usualCode } from '../model/answers.ts';
import { isEvent, saidHere, ticketHere } from '../model/here.ts';
import { verdictHere } from '../model/verdictHere.ts';
import { AddUtility } from './AddUtility.tsx';
import { AnswerForm } from './AnswerForm.tsx';
import { TicketActs } from './TicketActs.tsx';
import { TicketClock } from './TicketClock.tsx';
import { EventsHere, TicketHistory } from './TicketHistory.tsx';
import { VerdictBlock } from './VerdictBlock.tsx';

interface TicketProps {
  readonly ticket: LocateTicket;
  /** What this phone recorded of it and the office does not have yet. */
  readonly acts: readonly OutboxLocate[];
  readonly job: Job;
  /** The moment for which it is judged [ms]. */
  readonly now: number;
  readonly edit: boolean;
  /** The only ticket says what the job says above it. */
  readonly alone: boolean;
  /** Lines that the design draws. */
  readonly drawn: DesignDocument['site']['utilities'];
}

export function Ticket({ ticket, acts, now, job, edit, alone, drawn }: TicketProps) {
  const { t } = useText();
  const { timeZone } = job;
  const named = (utility: string) => {
    const code = usualCode(utility);
    return code === null ? utility : t(code);
  };
  const here = ticketHere(ticket, acts, now);
  const answersWait = acts.filter(({ refused, act }) => refused === null && act.what === 'answer');
  const waits = answersWait.length > 0 || acts.some(({ act }) => isEvent(act, 'marksAgree'));
  const changes = edit && !ticket.closed;
  return (
    <article className="stack">
      <Heading level={3} aside={ticket.closed ? t('locates.closed') : ticket.draft ? t('locates.draftAside') : undefined}>{ticket.draft ? t('locates.draftTitle') : t('locates.ticket', { number: ticket.number })}</Heading>
      <TicketClock ticket={ticket} timeZone={timeZone} />
      {ticket.closed || alone ? null : <VerdictBlock verdict={saidHere(verdictHere(here, now), [ticket], acts)} timeZone={timeZone} />}
      <Answers ticket={ticket} here={here} acts={answersWait} timeZone={timeZone} changes={changes && !ticket.draft} drawn={drawn} named={named} />
      <TicketHistory ticket={ticket} timeZone={timeZone} named={named} />
      <EventsHere acts={acts} timeZone={timeZone} named={named} />
      {changes ? <TicketActs ticket={here} waits={waits} job={job} named={named} /> : null}
    </article>
  );
}

interface AnswersProps extends Pick<TicketProps, 'ticket' | 'acts' | 'drawn'> {
  /** The ticket with what this phone knows of it. */
  readonly here: LocateTicket;
  readonly timeZone: string;
  readonly changes: boolean;
  readonly named: (utility: string) => string;
}

function Answers({ ticket, here, acts, timeZone, changes, drawn, named }: AnswersProps) {
  const { t } = useText();
  const [asked, setAsked] = useState<Response | null>(null);
  const known = latestAnswers(ticket);
  // One that was added on this phone has no answer in the office.
  const added = latestAnswers(here).filter(({ utility }) => known.every((one) => one.utility !== utility));
  return (
    <>
      <Table stacks caption={t('locates.answers')}
        columns={[{ key: 'utility', head: t('locates.utility') }, { key: 'answer', head: t('locates.answerSaid') }, { key: 'when', head: t('locates.when') }, ...(changes ? [{ key: 'act', head: <span className="unseen">{t('locates.recordAnswer')}</span> }] : [])]}
        rows={[...known, ...added].map((response) => ({
          key: response.utility,
          cells: {
            utility: named(response.utility),
            answer: <>{added.includes(response) ? null : <AnswerSaid jobId={ticket.jobId} response={response} drawn={drawn} named={named} />}<AnswerHere acts={acts} utility={response.utility} /></>,
            when: added.includes(response) ? t('ui.phone.here') : t('locates.saidBy', { at: response.at, by: response.by }, { timeZone }),
            act: <div className="ticket-act"><Button size="crew" kind={isAnswered(response) ? 'text' : 'plain'} aria-label={t(isAnswered(response) ? 'locates.changeAnswerOf' : 'locates.recordAnswerOf', { utility: named(response.utility) })} onClick={() => setAsked(response)}>{t(isAnswered(response) ? 'locates.changeAnswer' : 'locates.recordAnswer')}</Button></div>,
          },
        }))} />
      {changes ? <AddUtility ticket={here} /> : null}
      <Dialog open={asked !== null} title={asked === null ? '' : t('locates.recordAnswerOf', { utility: named(asked.utility) })} onClose={() => setAsked(null)}>
        {asked === null ? null : <AnswerForm params={{ jobId: ticket.jobId, ticketId: ticket.id }} timeZone={timeZone} response={asked} onDone={() => setAsked(null)} />}
      </Dialog>
    </>
  );
}

interface AnswerSaidProps {
  readonly jobId: string;
  readonly response: Response;
  readonly drawn: TicketProps['drawn'];
  readonly named: (utility: string) => string;
}

/** What a utility said and what that means; an answer against what the design draws is a caution. */
function AnswerSaid({ jobId, response, drawn, named }: AnswerSaidProps) {
  const { t } = useText();
  const lines = response.answer === 'clear' ? drawnOf(response.utility, drawn) : [];
  return (
    <span>
      {t(`locates.answer.${response.answer}`)}
      {response.answer === 'marked' || response.answer === 'clear' ? <span className="faint ticket-note">{t(`locates.answer.${response.answer}.means`)}</span> : null}
      {response.code === '' ? null : <span className="faint ticket-note">{t('locates.codeIs', { code: response.code })}</span>}
      {response.note === '' ? null : <span className="faint ticket-note">{t('locates.noteIs', { note: response.note })}</span>}
      {response.photoId === null ? null : <Photo jobId={jobId} photoId={response.photoId} alt={t('locates.photoOf', { utility: named(response.utility) })} />}
      {lines.map(({ id, name }) => <Notice key={id} severity="caution"><p>{t('locates.drawnButClear', { line: name })}</p></Notice>)}
    </span>
  );
}

/** The last that this phone recorded of a utility. */
function AnswerHere({ acts, utility }: { readonly acts: readonly OutboxLocate[]; readonly utility: string }) {
  const { t } = useText();
  const body = acts.findLast(({ act }) => act.body.utility === utility)?.act.body;
  if (body === undefined || !('answer' in body)) return null;
  return <Notice severity="caution"><p><strong>{t(`locates.answer.${body.answer}`)}</strong></p><p>{t(isAnswered(body) ? 'locates.here.waits' : 'locates.here.stops')}</p></Notice>;
}
