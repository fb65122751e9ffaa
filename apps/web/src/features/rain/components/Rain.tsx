import type { Job, RainTableRow } from '@yardfall/contracts';
import { useState } from 'react';
import { Choices } from '../../../components/Choices.tsx';
import { Empty } from '../../../components/Empty.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { Table } from '../../../components/Table.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useText } from '../../../lib/reader.tsx';
import { useRainTables } from '../api/rain.ts';
import { AddRain } from './AddRain.tsx';
import { StormBars } from './StormBars.tsx';

const shownPeriods = [2, 10, 25, 100];

/** Rain tables of a job, the newest first; the storm by alternating block of the one that is used. */
export function Rain({ job }: { readonly job: Job }) {
  const { t } = useText();
  const { may } = useMe();
  const { data, error, isPending } = useRainTables(job.id);
  if (isPending) return <Loading what={t('rain.loading')} />;
  const items = data?.data.items ?? [];
  const newest = items[0];
  return (
    <div className="stack">
      <ProblemNotice problem={error} />
      {newest ? <OneTable job={job} row={newest} /> : null}
      {may('rain.edit') ? (newest ? <details className="fold"><summary>{t('rain.another')}</summary><AddRain jobId={job.id} /></details> : <Empty what={t('rain.none')} why={t('rain.noneWhy')} step={<AddRain jobId={job.id} />} />) : newest ? null : <p>{t('rain.none')}</p>}
      {items.length > 1 ? <p className="faint">{t('rain.earlier', { n: items.length - 1 })}</p> : null}
    </div>
  );
}

function OneTable({ job, row }: { readonly job: Job; readonly row: RainTableRow }) {
  const { t, q } = useText();
  const { table } = row;
  const periods = table.returnPeriods.map((years, at) => ({ years, at })).filter(({ years }) => shownPeriods.includes(years));
  const [period, setPeriod] = useState(25);
  const choices = periods.filter(({ years }) => years >= 2).map(({ years }) => ({ value: String(years), label: t('rain.years', { years }) }));
  return (
    <article className="stack">
      <Heading level={3} aside={t('rain.by', { by: row.by, at: row.createdAt }, { timeZone: job.timeZone })}>{row.name}</Heading>
      {table.illustrative ? <Notice severity="caution"><p>{t('rain.illustrative')}</p></Notice> : null}
      <p className="faint">{table.source}{row.originalName === null ? '' : ` · ${row.originalName}`}</p>
      <Table caption={t('rain.depths')} columns={[{ key: 'duration', head: t('rain.duration') }, ...periods.map(({ years }) => ({ key: String(years), head: t('rain.years', { years }), figure: true }))]}
        rows={table.durations.flatMap((duration, line) => (duration > 86_400 ? [] : [{
          key: String(duration),
          cells: { duration: duration < 3600 ? q('minutes', duration) : q('hours', duration), ...Object.fromEntries(periods.map(({ years, at }) => [String(years), q('rain', table.depths[line]?.[at] ?? 0)])) },
        }]))} />
      <Choices label={t('rain.storm')} value={String(period)} choices={choices} onChange={(years) => setPeriod(Number(years))} />
      <StormBars jobId={job.id} tableId={row.id} returnPeriod={period} />
    </article>
  );
}
