import type { DesignDocument } from '@yardfall/calc';
import type { LocateTicket } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { Table } from '../../../components/Table.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useText } from '../../../lib/reader.tsx';
import { useCloseTicket } from '../api/locates.ts';
import { drawnOf, isAnswered, latestAnswers, usualCode, type Response } from '../model/answers.ts';
import { wholeDay } from '../model/clock.ts';
import { AnswerForm } from './AnswerForm.tsx';
import { VerdictBlock } from './VerdictBlock.tsx';

interface TicketProps {
  readonly ticket: LocateTicket;
  readonly timeZone: string;
  readonly edit: boolean;
  /** The only ticket says what the job says above it. */
  readonly alone: boolean;
  /** Lines that the design draws. */
  readonly drawn: DesignDocument['site']['utilities'];
}

export function Ticket({ ticket, timeZone, edit, alone, drawn }: TicketProps) {
  const { t } = useText();
  const [closing, setClosing] = useState(false);
  const [asked, setAsked] = useState<Response | null>(null);
  const { write, busy, problem } = useCloseTicket();
  const params = { jobId: ticket.jobId, ticketId: ticket.id };
  const named = (utility: string) => {
    const code = usualCode(utility);
    return code === null ? utility : t(code);
  };
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
            utility: named(response.utility),
            answer: <AnswerSaid response={response} drawn={drawn} />,
            when: t('locates.saidBy', { at: response.at, by: response.by }, { timeZone }),
            act: <div className="ticket-act"><Button size="crew" kind={isAnswered(response) ? 'text' : 'plain'} aria-label={t(isAnswered(response) ? 'locates.changeAnswerOf' : 'locates.recordAnswerOf', { utility: named(response.utility) })} onClick={() => setAsked(response)}>{t(isAnswered(response) ? 'locates.changeAnswer' : 'locates.recordAnswer')}</Button></div>,
          },
        }))} />
      {changes ? <div><Button onClick={() => setClosing(true)}>{t('locates.close')}</Button></div> : null}
      <Dialog open={closing} title={t('locates.closeAsk', { number: ticket.number })} onClose={() => setClosing(false)}>
        <p>{t('locates.closeMeans')}</p>
        <div className="row">
          <Button kind="danger" size="crew" busy={busy} onClick={() => write({ params, body: {} }, { onSuccess: () => setClosing(false) })}>{t('locates.closeDo')}</Button>
          <Button kind="text" size="crew" onClick={() => setClosing(false)}>{t('ui.cancel')}</Button>
        </div>
      </Dialog>
      <ProblemNotice problem={problem} />
      <Dialog open={asked !== null} title={asked === null ? '' : t('locates.recordAnswerOf', { utility: named(asked.utility) })} onClose={() => setAsked(null)}>
        {asked === null ? null : <AnswerForm params={params} response={asked} onDone={() => setAsked(null)} />}
      </Dialog>
    </article>
  );
}

/** What a utility said and what that means; an answer against what the design draws is a caution. */
function AnswerSaid({ response, drawn }: { readonly response: Response; readonly drawn: TicketProps['drawn'] }) {
  const { t } = useText();
  const lines = response.answer === 'clear' ? drawnOf(response.utility, drawn) : [];
  return (
    <span>
      {t(`locates.answer.${response.answer}`)}
      {response.answer === 'marked' || response.answer === 'clear' ? <span className="faint ticket-note">{t(`locates.answer.${response.answer}.means`)}</span> : null}
      {response.note === '' ? null : <span className="faint ticket-note">{t('locates.noteIs', { note: response.note })}</span>}
      {lines.map(({ id, name }) => <Notice key={id} severity="caution"><p>{t('locates.drawnButClear', { line: name })}</p></Notice>)}
    </span>
  );
}

/** The clock of a ticket, told in the time of the property, with the rule that it follows. */
function TicketClock({ ticket, timeZone }: { readonly ticket: LocateTicket; readonly timeZone: string }) {
  const { t, q } = useText();
  const { may } = useMe();
  const at = (moment: string | null) => (moment === null ? t('locates.notTold') : q('dateTime', moment, { timeZone }));
  const legal = (moment: string | null, which: 'start' | 'end') => {
    const day = moment === null ? null : wholeDay(moment, timeZone, which);
    return day === null ? at(moment) : t(which === 'start' ? 'locates.fromDay' : 'locates.throughDay', { day });
  };
  return (
    <>
      <dl className="ticket-clock">
        <div><dt>{t('locates.requestedAt')}</dt><dd>{at(ticket.requestedAt)}</dd></div>
        <div><dt>{t('locates.legalStart')}</dt><dd>{legal(ticket.legalStartAt, 'start')}</dd></div>
        <div><dt>{t('locates.renewBy')}</dt><dd>{legal(ticket.renewByAt, 'end')}</dd></div>
        <div><dt>{t('locates.expires')}</dt><dd>{legal(ticket.expiresAt, 'end')}</dd></div>
      </dl>
      <p>{t('locates.areaIs', { area: ticket.area })}</p>
      {ticket.rule === null
        ? <Notice severity="stop"><p>{t('locates.rule.none', { state: ticket.state })}</p></Notice>
        : <p className="faint">{t('locates.rule', { source: ticket.rule.source, asOf: ticket.rule.asOf })} {may('company.manage') && ticket.rule.undated ? t('locates.rule.check') : null}</p>}
    </>
  );
}
