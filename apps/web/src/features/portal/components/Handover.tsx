import type { Portal } from '@yardfall/contracts';
import { Heading } from '../../../components/Heading.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { Table } from '../../../components/Table.tsx';
import { TiesTable } from '../../../components/TiesTable.tsx';
import { useText } from '../../../lib/reader.tsx';
import { CallUs } from './CallUs.tsx';

const alarmSteps = ['stayOut', 'panel', 'power', 'reset', 'sweep', 'call', 'trained'] as const;

/** What to do and when, what to do when the alarm sounds, and how long the warranty runs. */
export function Handover({ handover, phone }: { readonly handover: NonNullable<Portal['handover']>; readonly phone: string }) {
  const { t, say } = useText();
  const pumped = handover.care.some(({ code }) => code === 'portal.care.alarm');
  const rows = handover.care.map(({ code, who, when }) => ({
    key: code, cells: { what: say(code), who: t(who === 'customer' ? 'portal.handover.yours' : 'portal.handover.ours'), when: <span className="faint">{say(when)}</span> },
  }));
  return (
    <section className="stack" aria-labelledby="handover">
      <Heading id="handover">{t('portal.handover')}</Heading>
      {pumped ? <p className="measure">{t('portal.handover.words')}</p> : null}
      <p>{t('portal.handover.since', { from: handover.warrantyFrom })}</p>
      <Table caption={t('portal.handover')} captionUnseen stacks rows={rows}
        columns={[{ key: 'what', head: t('portal.handover.what') }, { key: 'who', head: t('portal.handover.who') }, { key: 'when', head: t('portal.handover.when') }]} />
      {pumped ? (
        <Notice severity="caution" title={t('portal.alarm')}>
          <CallUs phone={phone} />
          <ol className="drain-steps">{alarmSteps.map((step) => <li key={step}>{t(`portal.alarm.${step}`)}</li>)}</ol>
        </Notice>
      ) : null}
      {handover.breaker === '' ? null : <p>{t('portal.breaker', { breaker: handover.breaker })}</p>}
      {handover.ties === null ? null : <><Heading level={3}>{t('portal.ties')}</Heading><TiesTable ties={handover.ties} /></>}
      <p>{t('portal.warranty', { from: handover.warrantyFrom, until: handover.warrantyUntil })}</p>
    </section>
  );
}
