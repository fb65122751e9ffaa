import type { LocateTicket } from '@yardfall/contracts';
import { Photo } from '../../../components/Photo.tsx';
import { useText } from '../../../lib/reader.tsx';

interface TicketHistoryProps {
  readonly ticket: LocateTicket;
  readonly timeZone: string;
  readonly named: (utility: string) => string;
}

/** What happened to the ticket, each with who put it on record. */
export function TicketHistory({ ticket, timeZone, named }: TicketHistoryProps) {
  const { t } = useText();
  if (ticket.events.length === 0) return null;
  return (
    <div>
      <p className="faint">{t('locates.history')}</p>
      <ul className="ticket-history">
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
