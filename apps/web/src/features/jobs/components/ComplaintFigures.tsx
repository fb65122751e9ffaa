import type { Complaint } from '@yardfall/contracts';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';

export function ComplaintFigures({ complaint }: { readonly complaint: Complaint }) {
  const { t, q } = useText();
  const { depth, startsAfter, staysFor, timesPerYear, rainDate, door, tried, enteredHouse, onDryDays } = complaint;
  const unknown = <span className="faint">{t('jobs.complaint.unknown')}</span>;
  const rows = [
    { key: 'depth', what: t('jobs.complaint.depth'), figure: depth === null ? unknown : q('height', depth) },
    { key: 'after', what: t('jobs.complaint.startsAfter'), figure: startsAfter === null ? unknown : q('minutes', startsAfter) },
    { key: 'stays', what: t('jobs.complaint.staysFor'), figure: staysFor === null ? unknown : q('hours', staysFor) },
    { key: 'times', what: t('jobs.complaint.timesPerYear'), figure: timesPerYear === null ? unknown : q('count', timesPerYear) },
    { key: 'day', what: t('jobs.complaint.rainDate'), figure: rainDate === null ? unknown : q('date', rainDate) },
    { key: 'door', what: t('jobs.complaint.door'), figure: door || unknown },
    { key: 'house', what: t('jobs.complaint.enteredHouse'), figure: t(enteredHouse ? 'ui.yes' : 'ui.no') },
    { key: 'dry', what: t('jobs.complaint.onDryDays'), figure: t(onDryDays ? 'ui.yes' : 'ui.no') },
  ];
  return (
    <>
      <Table caption={t('jobs.complaint')} captionUnseen columns={[{ key: 'what', head: t('jobs.complaint') }, { key: 'figure', head: t('jobs.complaint.said'), figure: true }]}
        rows={rows.map(({ key, what, figure }) => ({ key, cells: { what, figure } }))} />
      {tried ? <p>{t('jobs.complaint.triedIs', { tried })}</p> : null}
    </>
  );
}
