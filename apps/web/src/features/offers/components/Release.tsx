import { type Job, jobs, type Offer, type ResponseOf } from '@yardfall/contracts';
import { useId } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useOutbox } from '../../../hooks/useOutbox.ts';
import { holdsRelease } from '../../../lib/answersHere.ts';
import { ApiProblem } from '../../../lib/problem.ts';
import { useText } from '../../../lib/reader.tsx';
import { useRelease, useReleaseCheck } from '../api/offers.ts';

type Reason = ResponseOf<typeof jobs.releaseCheck>['reasons'][number];

/** The part of the job page where each reason is answered. */
const answeredAt: Readonly<Record<string, string>> = {
  'jobs.held.outletQuestion': 'permits', 'jobs.held.permit': 'permits', 'jobs.held.revisionNotIssued': 'design', 'jobs.held.foundOpen': 'work', 'jobs.held.referred': 'site',
};

/** The owner's release sets the build revision; what holds it is said reason by reason before it is pressed. */
export function Release({ job, offer }: { readonly job: Job; readonly offer: Offer }) {
  const { t } = useText();
  const { may } = useMe();
  const held = useId();
  const { write, busy, problem } = useRelease();
  const isReleased = job.releasedAt !== null && job.buildRevisionId === offer.revisionId;
  const { data, error } = useReleaseCheck(job.id, offer.id, !isReleased);
  const onPhone = useOutbox().some((entry) => holdsRelease(entry, job.id));
  if (isReleased) return <p>{t('offers.released', { at: job.releasedAt ?? '' }, { timeZone: job.timeZone })}</p>;
  const reasons = data?.data.reasons ?? [];
  const late = problem instanceof ApiProblem && problem.code === 'release.held' ? problem.issues : [];
  return (
    <div className="stack">
      <p className="measure">{t('offers.releaseWhy')}</p>
      <div id={held}>
        {reasons.length > 0 ? <HeldBy reasons={reasons} /> : null}
        {onPhone ? <Notice severity="caution"><p><a href="#permits">{t('offers.heldOnPhone')}</a></p></Notice> : null}
        {reasons.length === 0 && late.length > 0 ? <Notice severity="stop" title={t('offers.held')}><ul className="offer-held">{late.map(({ path, message }) => <li key={path + message}>{message}</li>)}</ul></Notice> : null}
      </div>
      <ProblemNotice problem={error} />
      {late.length > 0 ? null : <ProblemNotice problem={problem} />}
      {may('jobs.release')
        ? <div className="row"><Button kind="main" busy={busy} disabled={busy || data === undefined || reasons.length > 0 || onPhone} aria-describedby={held} onClick={() => write({ params: { jobId: job.id }, body: { offerId: offer.id } })}>{t('offers.release')}</Button></div>
        : <p>{t('offers.ownerReleases')}</p>}
    </div>
  );
}

function HeldBy({ reasons }: { readonly reasons: readonly Reason[] }) {
  const { t, say } = useText();
  return (
    <Notice severity="caution" title={t('offers.held')}>
      <ul className="offer-held">
        {reasons.map(({ code, params }) => {
          const part = answeredAt[code];
          const words = say(code, params);
          return <li key={code + JSON.stringify(params)}>{part === undefined ? words : <a href={`#${part}`}>{words}</a>}</li>;
        })}
      </ul>
    </Notice>
  );
}
