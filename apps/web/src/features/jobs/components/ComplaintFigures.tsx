import type { Complaint } from '@yardfall/contracts';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';

export function ComplaintFigures({ complaint }: { readonly complaint: Complaint }) {
  const { t, q } = useText();
  const { depth, startsAfter, staysFor, timesPerYear, rainDate, door, tried, enteredHouse, onDryDays } = complaint;
  const rows = [
    { key: 'depth', what: t('jobs.complaint.depth'), figure: depth === null ? null : q('height', depth) },
    { key: 'after', what: t('jobs.complaint.startsAfter'), figure: startsAfter === null ? null : q('minutes', startsAfter) },
    { key: 'stays', what: t('jobs.complaint.staysFor'), figure: staysFor === null ? null : q('hours', staysFor) },
    { key: 'times', what: t('jobs.complaint.timesPerYear'), figure: timesPerYear === null ? null : q('count', timesPerYear) },
    { key: 'day', what: t('jobs.complaint.rainDate'), figure: rainDate === null ? null : q('date', rainDate) },
    { key: 'door', what: t('jobs.complaint.door'), figure: door === '' ? null : door },
    { key: 'house', what: t('jobs.complaint.enteredHouse'), figure: t(enteredHouse ? 'ui.yes' : 'ui.no') },
    { key: 'dry', what: t('jobs.complaint.onDryDays'), figure: t(onDryDays ? 'ui.yes' : 'ui.no') },
  ];
  const unsaid = rows.filter(({ figure }) => figure === null).map(({ what }) => what);
  return (
    <>
      <Table caption={t('jobs.complaint')} captionUnseen columns={[{ key: 'what', head: t('jobs.complaint') }, { key: 'figure', head: t('jobs.complaint.said') }]}
        rows={rows.filter(({ figure }) => figure !== null).map(({ key, what, figure }) => ({ key, cells: { what, figure } }))} />
      {unsaid.length > 0 ? <p className="faint">{t('jobs.complaint.unsaid', { what: unsaid.join('; ') })}</p> : null}
      {tried ? <p>{t('jobs.complaint.triedIs', { tried })}</p> : null}
    </>
  );
}
