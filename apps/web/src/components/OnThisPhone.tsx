import type { ErrorCode } from '@yardfall/contracts';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { OldPage, useOutbox, useSending } from '../hooks/useOutbox.ts';
import { useProblemText } from '../hooks/useProblemText.ts';
import { isSetAside, markRefused, removeEntries, type OutboxEntry } from '../lib/outbox.ts';
import { ApiProblem } from '../lib/problem.ts';
import { isFreeLink, isVideo, videoOf } from '../lib/videos.ts';
import { useText } from '../lib/reader.tsx';
import { Button } from './Button.tsx';
import { Notice } from './Notice.tsx';
import './OnThisPhone.css';

/** Along the foot of every page while something recorded is not in the office yet, or was refused there. */
export function OnThisPhone() {
  const { t } = useText();
  const entries = useOutbox();
  const { problem, sendNow } = useSending();
  const [failed, setFailed] = useState(false);
  const unsent = entries.filter((entry) => entry.refused === null || isSetAside(entry));
  const waiting = unsent.length;
  const videos = isFreeLink() ? [] : unsent.filter(isVideo).filter(({ now: asked }) => asked !== true);
  const held = new Set(videos.map(({ id }) => id));
  const isHeld = waiting > 0 && unsent.every((entry) => videoOf(entry, held) !== null);
  const refused = entries.filter((entry) => entry.refused !== null && !isSetAside(entry));
  if (entries.length === 0 && problem === null) return null;
  const now = (work: Promise<void>) => {
    work.then(() => setFailed(false), () => setFailed(true));
  };
  return (
    <aside className="on-this-phone" aria-label={t('ui.phone.title')}>
      {waiting > 0 ? (
        <div className="row">
          <p role="status">{isHeld ? t('ui.phone.videoWaits', { n: videos.length }) : t('ui.phone.waiting', { n: waiting })}</p>
          {isHeld ? null : <Button kind="text" size="crew" onClick={sendNow}>{t('ui.phone.sendNow')}</Button>}
          <Link to="/waits" className="button button-text button-crew">{t('ui.waits.see')}</Link>
        </div>
      ) : null}
      {refused.length > 0 ? <Refused entries={refused} onAgain={() => now(markRefused(refused, null))} onSetAside={() => now(removeEntries(refused))} /> : null}
      {failed || problem !== null ? <Notice severity="stop"><p>{t(problem instanceof OldPage ? 'ui.phone.oldPage' : 'ui.phone.noStore')}</p></Notice> : null}
    </aside>
  );
}

interface RefusedProps {
  readonly entries: readonly OutboxEntry[];
  readonly onAgain: () => void;
  readonly onSetAside: () => void;
}

function Refused({ entries, onAgain, onSetAside }: RefusedProps) {
  const { t } = useText();
  const sentence = useProblemText();
  const [sure, setSure] = useState(false);
  const reasons = [...new Set(entries.map((entry) => sentence(new ApiProblem((entry.refused ?? 'internal') as ErrorCode))))];
  return (
    <Notice severity="stop" title={t('ui.phone.refused', { n: entries.length })}
      action={
        <div className="row">
          <Button onClick={onAgain}>{t('ui.tryAgain')}</Button>
          {sure ? <Button kind="danger" onClick={onSetAside}>{t('ui.phone.throwAway')}</Button> : <Button kind="text" onClick={() => setSure(true)}>{t('ui.phone.setAside')}</Button>}
        </div>
      }>
      {reasons.map((reason) => <p key={reason}>{reason}</p>)}
    </Notice>
  );
}
