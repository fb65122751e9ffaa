import { jobs } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { Page } from '../../components/Page.tsx';
import { Yard } from '../../features/surveys/index.ts';
import { read } from '../../lib/query.ts';
import { useText } from '../../lib/reader.tsx';

/** Survey and diagnosis on the spot. The name of the job is all that it needs of the office, and it goes on without. */
export function YardPage() {
  const { t } = useText();
  const { jobId } = useParams({ from: '/member/jobs/$jobId/yard' });
  const { data } = useQuery(read(jobs.read, { params: { jobId } }));
  return (
    <div className="yard-sheet">
      <Page title={data ? t('surveys.yard.of', { job: data.data.title }) : t('surveys.yard.title')} lead={<Link className="yard-back" to="/jobs/$jobId" params={{ jobId }} hash="levels">{t('surveys.yard.back')}</Link>}>
        <Yard key={jobId} jobId={jobId} />
      </Page>
    </div>
  );
}
