import { useNavigate } from '@tanstack/react-router';
import { Page } from '../../components/Page.tsx';
import { NewJobForm } from '../../features/jobs/index.ts';
import { useMe } from '../../hooks/useMe.ts';
import { useText } from '../../lib/reader.tsx';

export function NewJobPage() {
  const { t } = useText();
  const { me } = useMe();
  const navigate = useNavigate();
  return (
    <Page title={t('jobs.new')} lead={t('jobs.new.lead')}>
      {me === null ? null : <NewJobForm company={me.company} onDone={(job) => void navigate({ to: '/jobs/$jobId', params: { jobId: job.id } })} />}
    </Page>
  );
}
