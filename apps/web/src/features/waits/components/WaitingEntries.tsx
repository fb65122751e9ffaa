import type { ErrorCode, Job } from '@yardfall/contracts';
import { useState, useSyncExternalStore } from 'react';
import { Button } from '../../../components/Button.tsx';
import { VideoWaits } from '../../../components/VideoWaits.tsx';
import { Empty } from '../../../components/Empty.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { useOutbox, useOutboxRead } from '../../../hooks/useOutbox.ts';
import { useProblemText } from '../../../hooks/useProblemText.ts';
import { isSetAside, markRefused, removeEntries, type OutboxEntry } from '../../../lib/outbox.ts';
import { pictureOf } from '../../../lib/pictureOf.ts';
import { ApiProblem } from '../../../lib/problem.ts';
import { onSentShares, sentShares } from '../../../lib/sent.ts';
import { isVideo } from '../../../lib/videos.ts';
import { useText } from '../../../lib/reader.tsx';
import { detailOf, timeOf } from '../model/entries.ts';
import './Waits.css';

type Where = Pick<Job, 'id' | 'title' | 'timeZone'>;

/** Everything that was recorded on this phone and is not in the office, oldest first, with its state and why. */
export function WaitingEntries({ jobs }: { readonly jobs: readonly Where[] }) {
  const { t } = useText();
  const entries = useOutbox();
  if (!useOutboxRead()) return <Loading what={t('ui.waits.title')} />;
  if (entries.length === 0) return <Empty what={t('ui.waits.none')} why={t('ui.waits.noneWhy')} />;
  return <ol className="waits">{entries.map((entry) => <li key={entry.at}><Waiting entry={entry} job={jobs.find(({ id }) => id === entry.jobId)} /></li>)}</ol>;
}

function Waiting({ entry, job }: { readonly entry: OutboxEntry; readonly job: Where | undefined }) {
  const { t, say, q } = useText();
  const sentence = useProblemText();
  const detail = detailOf(entry);
  const share = useSyncExternalStore(onSentShares, sentShares).get(entry.id);
  return (
    <>
      {entry.kind === 'photo' && !isVideo(entry) ? <img src={pictureOf(entry)} alt="" /> : null}
      <div>
        <p><strong>{say(`ui.waits.kind.${isVideo(entry) ? 'video' : entry.kind}`)}</strong>{detail === null ? null : ` · ${detail.of === '' ? '' : `${detail.ofIsCode ? say(detail.of) : detail.of}: `}${say(detail.code)}`}</p>
        <p className="faint">{job === undefined ? null : `${job.title}, `}{q('dateTime', timeOf(entry), job)}</p>
        {isVideo(entry) && entry.refused === null ? null : <p>{entry.refused === null && share !== undefined ? t('ui.waits.partSent', { n: Math.floor(share * 100) }) : entry.refused === null ? t('ui.waits.here') : t('ui.waits.refused', { why: sentence(new ApiProblem(entry.refused as ErrorCode)) })}</p>}
        {isVideo(entry) && entry.refused === null ? <VideoWaits entry={entry} /> : null}
        {entry.refused === null || isSetAside(entry) ? null : <Decide entry={entry} />}
      </div>
    </>
  );
}

/** What the office refused stays until a person decides. */
function Decide({ entry }: { readonly entry: OutboxEntry }) {
  const { t } = useText();
  const [sure, setSure] = useState(false);
  return (
    <div className="row">
      <Button size="crew" onClick={() => void markRefused([entry], null)}>{t('ui.tryAgain')}</Button>
      {sure
        ? <Button size="crew" kind="danger" onClick={() => void removeEntries([entry])}>{t('ui.phone.throwAway')}</Button>
        : <Button size="crew" kind="text" onClick={() => setSure(true)}>{t('ui.phone.setAside')}</Button>}
    </div>
  );
}
