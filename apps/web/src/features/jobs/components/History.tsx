import type { Job } from '@yardfall/contracts';
import { Heading } from '../../../components/Heading.tsx';
import { Table } from '../../../components/Table.tsx';
import { useText } from '../../../lib/reader.tsx';

export function History({ job }: { readonly job: Job }) {
  const { t, q } = useText();
  const columns = [
    { key: 'stage', head: t('jobs.history.stage') },
    { key: 'at', head: t('jobs.history.at') },
    { key: 'by', head: t('jobs.history.by') },
  ];
  return (
    <div className="stack">
      <Heading level={3}>{t('jobs.history')}</Heading>
      <Table caption={t('jobs.history')} captionUnseen columns={columns} rows={job.history.map((entry) => ({
        key: entry.stage + entry.at,
        cells: { stage: t(`jobs.stage.${entry.stage}`), at: q('dateTime', entry.at, { timeZone: job.timeZone }), by: entry.by ?? t('jobs.history.service') },
      }))} />
    </div>
  );
}
