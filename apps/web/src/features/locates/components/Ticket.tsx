import type { LocateTicket } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useCloseTicket } from '../api/locates.ts';
import { latestAnswers, type Response } from '../model/answers.ts';
import { AnswerForm } from './AnswerForm.tsx';
import { VerdictBlock } from './VerdictBlock.tsx';

interface TicketProps {
  readonly ticket: LocateTicket;
  readonly timeZone: string;
  readonly edit: boolean;
  /** The only ticket says what the job says above it. */
  readonly alone: boolean;
}

export function Ticket({ ticket, timeZone, edit, alone }: TicketProps) {
  const { t } = useText();
  const [asked, setAsked] = useState<Response | null>(null);
  const { write, busy, problem } = useCloseTicket();
  const params = { jobId: ticket.jobId, ticketId: ticket.id };
  const changes = edit && !ticket.closed;
  return (
    <article className="stack">
      <Heading level={3} aside={ticket.closed ? t('locates.closed') : undefined}>{t('locates.ticket', { number: ticket.number })}</Heading>
      <TicketClock ticket={ticket} timeZone={timeZone} />
      {ticket.closed || alone ? null : <VerdictBlock verdict={ticket.verdict} timeZone={timeZone} />}
      <Table stacks caption={t('locates.answers')}
        columns={[{ key: 'utility', head: t('locates.utility') }, { key: 'answer', head: t('locates.answerSaid') }, { key: 'when', head: t('locates.when') }, ...(changes ? [{ key: 'act', head: <span className="unseen">{t('locates.recordAnswer')}</span> }] : [])]}
        rows={latestAnswers(ticket).map((response) => ({
          key: response.utility,
          cells: {
            utility: response.utility,
            answer: <span>{t(`locates.answer.${response.answer}`)}{response.note === '' ? null : <span className="faint ticket-note">{t('locates.noteIs', { note: response.note })}</span>}</span>,
            when: t('locates.saidBy', { at: response.at, by: response.by }, { timeZone }),
            act: <Button size="crew" aria-label={t('locates.recordAnswerOf', { utility: response.utility })} onClick={() => setAsked(response)}>{t('locates.recordAnswer')}</Button>,
          },
        }))} />
      {changes ? <div><Button kind="text" busy={busy} onClick={() => write({ params, body: {} })}>{t('locates.close')}</Button></div> : null}
      <ProblemNotice problem={problem} />
      <Dialog open={asked !== null} title={asked === null ? '' : t('locates.recordAnswerOf', { utility: asked.utility })} onClose={() => setAsked(null)}>
        {asked === null ? null : <AnswerForm params={params} response={asked} onDone={() => setAsked(null)} />}
      </Dialog>
    </article>
  );
}

/** The clock of a ticket, told in the time of the property, with the rule that it follows. */
function TicketClock({ ticket, timeZone }: { readonly ticket: LocateTicket; readonly timeZone: string }) {
  const { t, q } = useText();
  const at = (moment: string | null) => (moment === null ? t('locates.notTold') : q('dateTime', moment, { timeZone }));
  return (
    <>
      <dl className="ticket-clock">
        <div><dt>{t('locates.requestedAt')}</dt><dd>{at(ticket.requestedAt)}</dd></div>
        <div><dt>{t('locates.legalStart')}</dt><dd>{at(ticket.legalStartAt)}</dd></div>
        <div><dt>{t('locates.renewBy')}</dt><dd>{at(ticket.renewByAt)}</dd></div>
        <div><dt>{t('locates.expires')}</dt><dd>{at(ticket.expiresAt)}</dd></div>
      </dl>
      <p>{t('locates.areaIs', { area: ticket.area })}</p>
      {ticket.rule === null
        ? <Notice severity="stop"><p>{t('locates.rule.none', { state: ticket.state })}</p></Notice>
        : <p className="faint">{t('locates.rule', { source: ticket.rule.source, asOf: ticket.rule.asOf })}</p>}
    </>
  );
}
