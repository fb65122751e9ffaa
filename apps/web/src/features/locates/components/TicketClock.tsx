import type { LocateTicket } from '@yardfall/contracts';
import { Notice } from '../../../components/Notice.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useText } from '../../../lib/reader.tsx';
import { givenOf } from '../../../lib/tickets.ts';
import { wholeDay } from '../../../lib/wholeDay.ts';

/** The clock of a ticket, told in the time of the property, with the rule that it follows and the strip along each mark. */
export function TicketClock({ ticket, timeZone }: { readonly ticket: LocateTicket; readonly timeZone: string }) {
  const { t, q } = useText();
  const at = (moment: string | null) => (moment === null ? t('locates.notTold') : q('dateTime', moment, { timeZone }));
  const legal = (moment: string | null, which: 'start' | 'end') => {
    const day = moment === null ? null : wholeDay(moment, timeZone, which);
    return day === null ? at(moment) : t(which === 'start' ? 'locates.fromDay' : 'locates.throughDay', { day });
  };
  const last = givenOf(ticket).at(-1);
  return (
    <>
      {ticket.draft ? null : (
        <dl className="ticket-clock">
          <div><dt>{t('locates.requestedAt')}</dt><dd>{at(ticket.requestedAt)}</dd></div>
          <div><dt>{t('locates.legalStart')}</dt><dd>{legal(ticket.legalStartAt, 'start')}<Beside given={last?.startAt} counted={ticket.legalStartAt} shown={at} /></dd></div>
          <div><dt>{t('locates.renewBy')}</dt><dd>{legal(ticket.renewByAt, 'end')}</dd></div>
          <div><dt>{t('locates.expires')}</dt><dd>{legal(ticket.expiresAt, 'end')}<Beside given={last?.expiresAt} counted={ticket.expiresAt} shown={at} /></dd></div>
        </dl>
      )}
      <p>
        {t('locates.areaIs', { area: ticket.area })}
        {ticket.method === '' ? null : <><br />{t('locates.methodIs', { method: ticket.method })}</>}
        {ticket.depth === null ? null : <><br />{t('locates.depthIs', { depth: ticket.depth })}</>}
      </p>
      {ticket.draft ? null : <Rule ticket={ticket} />}
    </>
  );
}

interface BesideProps {
  readonly given: string | null | undefined;
  readonly counted: string | null;
  readonly shown: (moment: string) => string;
}

/** Whether the time beside it is the center's or the rule's, where the center wrote one. */
function Beside({ given, counted, shown }: BesideProps) {
  const { t } = useText();
  if (given == null) return null;
  const counts = counted !== null && Date.parse(given) === Date.parse(counted);
  return <span className="faint ticket-note">{counts ? t('locates.givenCounts') : t(counted === null ? 'locates.givenOnly' : 'locates.givenLooser', { at: shown(given) })}</span>;
}

function Rule({ ticket: { rule, state } }: { readonly ticket: LocateTicket }) {
  const { t } = useText();
  const { may } = useMe();
  return (
    <>
      <Notice severity="caution">
        <p>{rule === null || rule.tolerance === null ? t('locates.toleranceUnknown') : t('locates.tolerance', { tolerance: rule.tolerance })} {rule?.toleranceFrom === 'edge' && rule.tolerance !== null ? t('locates.toleranceEdge') : null}</p>
      </Notice>
      {rule === null
        ? <Notice severity="stop"><p>{t('locates.rule.none', { state })} <a href="/company#locate-rules">{t('locates.rules.enterHere')}</a></p></Notice>
        : <p className="faint">{t('locates.rule', { source: rule.source, asOf: rule.asOf })} {rule.signedBy === null ? null : t('locates.rules.signedAs', { name: rule.signedBy })} {may('company.manage') && rule.undated ? t('locates.rule.check') : null}</p>}
    </>
  );
}
