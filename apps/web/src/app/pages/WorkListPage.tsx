import { jobs } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { Loading } from '../../components/Loading.tsx';
import { ProblemNotice } from '../../components/Notice.tsx';
import { Page } from '../../components/Page.tsx';
import { PrintedList } from '../../features/checklists/index.ts';
import { read } from '../../lib/query.ts';
import { useText } from '../../lib/reader.tsx';

/** The install list of a job on paper. */
export function WorkListPage() {
  const { t } = useText();
  const { jobId } = useParams({ from: '/member/jobs/$jobId/list' });
  const { data, error, isPending } = useQuery(read(jobs.read, { params: { jobId } }));
  if (isPending) return <Loading what={t('jobs.what')} />;
  if (!data) return <ProblemNotice problem={error} />;
  return <Page title={t('checklists.printed.title')} lead={data.data.title}><PrintedList jobId={jobId} released={data.data.buildRevisionId !== null} /></Page>;
}
