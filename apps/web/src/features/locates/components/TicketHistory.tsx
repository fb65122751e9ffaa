import { isStop, type LocateTicket } from '@yardfall/contracts';
import { Notice } from '../../../components/Notice.tsx';
import { Photo } from '../../../components/Photo.tsx';
import type { OutboxLocate } from '../../../lib/outbox.ts';
import { useText } from '../../../lib/reader.tsx';
import { givenOf } from '../../../lib/tickets.ts';

interface TicketHistoryProps {
  readonly ticket: LocateTicket;
  readonly timeZone: string;
  readonly named: (utility: string) => string;
}

/** What happened to the ticket, each with who put it on record. */
export function TicketHistory({ ticket, timeZone, named }: TicketHistoryProps) {
  const { t, q } = useText();
  const given = givenOf(ticket);
  if (ticket.events.length === 0 && given.length === 0) return null;
  const told = (moment: string | null) => (moment === null ? t('locates.givenNone') : q('dateTime', moment, { timeZone }));
  return (
    <div>
      <p className="faint">{t('locates.history')}</p>
      <ul className="ticket-history">
        {given.map(({ id, startAt, expiresAt, note, at, by }) => (
          <li key={id}>
            {t('locates.givenLine', { start: told(startAt), end: told(expiresAt) })}
            {note === '' ? null : <span className="ticket-note">{note}</span>}
            <span className="faint ticket-note">{t('locates.saidBy', { at, by }, { timeZone })}</span>
          </li>
        ))}
        {ticket.events.map(({ id, kind, at, by, note, utility, hazard, photoId, recordedAt }) => (
          <li key={id}>
            {t('locates.eventLine', { at, what: `locates.event.${kind}` }, { timeZone })}{utility === '' ? '' : `, ${named(utility)}`}{hazard ? `, ${t('locates.eventHazard')}` : ''}
            {note === '' ? null : <span className="ticket-note">{note}</span>}
            <span className="faint ticket-note">{t('locates.saidBy', { at: recordedAt, by }, { timeZone })}</span>
            {photoId === null ? null : <Photo jobId={ticket.jobId} photoId={photoId} alt={t(`locates.event.${kind}`)} />}
          </li>
        ))}
      </ul>
    </div>
  );
}

interface EventsHereProps extends Omit<TicketHistoryProps, 'ticket'> {
  readonly acts: readonly OutboxLocate[];
}

/** What happened and is only known on this phone; whether it stops the digging here already. */
export function EventsHere({ acts, timeZone, named }: EventsHereProps) {
  const { t } = useText();
  return acts.map(({ id, jobId, refused, act }) => {
    if (act.what !== 'event') return null;
    const { kind, at, utility, hazard, note, photoId } = act.body;
    const stops = isStop(kind);
    return (
      <Notice key={id} severity={stops || refused !== null ? 'stop' : 'caution'}>
        <p><strong>{t('locates.eventLine', { at, what: `locates.event.${kind}` }, { timeZone })}{utility === '' ? '' : `, ${named(utility)}`}{hazard ? `, ${t('locates.eventHazard')}` : ''}</strong></p>
        {note === '' ? null : <p>{note}</p>}
        <p>{t(refused !== null ? 'locates.here.refused' : stops ? 'locates.here.stops' : kind === 'remarkRequested' ? 'locates.here.kept' : 'locates.here.waits')}</p>
        {photoId === null ? null : <Photo jobId={jobId} photoId={photoId} alt={t(`locates.event.${kind}`)} />}
      </Notice>
    );
  });
}
