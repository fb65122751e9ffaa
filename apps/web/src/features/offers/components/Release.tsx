import type { Job, Offer } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { ApiProblem } from '../../../lib/problem.ts';
import { useText } from '../../../lib/reader.tsx';
import { useRelease } from '../api/offers.ts';

/** The owner's release sets the build revision; what holds it is said reason by reason. */
export function Release({ job, offer }: { readonly job: Job; readonly offer: Offer }) {
  const { t } = useText();
  const { may } = useMe();
  const { write, busy, problem } = useRelease();
  if (job.releasedAt !== null && job.buildRevisionId === offer.revisionId) return <p>{t('offers.released', { at: job.releasedAt }, { timeZone: job.timeZone })}</p>;
  if (!may('jobs.release')) return <p>{t('offers.ownerReleases')}</p>;
  const reasons = problem instanceof ApiProblem && problem.code === 'release.held' ? problem.issues : [];
  return (
    <div className="stack">
      <p className="measure">{t('offers.releaseWhy')}</p>
      {reasons.length > 0 ? (
        <Notice severity="stop" title={t('offers.held')}>
          <ul className="offer-held">{reasons.map(({ path, message }) => <li key={path + message}>{message}</li>)}</ul>
        </Notice>
      ) : <ProblemNotice problem={problem} />}
      <div className="row"><Button kind="main" busy={busy} onClick={() => write({ params: { jobId: job.id }, body: { offerId: offer.id } })}>{t('offers.release')}</Button></div>
    </div>
  );
}
