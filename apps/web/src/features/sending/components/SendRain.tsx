import type { ErrorCode, Sending } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { TextArea } from '../../../components/Field.tsx';
import { FilePick } from '../../../components/FilePick.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { ApiProblem } from '../../../lib/problem.ts';
import { useProblemText } from '../../../hooks/useProblemText.ts';
import { useText } from '../../../lib/reader.tsx';
import { useSendingFiles, type SendingFiles } from '../api/useSendingFiles.ts';
import { accepted, refusalOf, type Refusal } from '../model/choice.ts';
import type { WaitingFile } from '../model/waiting.ts';
import './sending.css';

/** Choose photos and videos, say when and where, and see each one arrive. */
export function SendRain({ page }: { readonly page: Sending }) {
  const { t } = useText();
  const sending = useSendingFiles();
  const ended = sending.problem?.status === 401;
  return (
    <div className="stack-wide">
      {ended ? <Notice severity="stop"><p>{t('sending.over')}</p></Notice> : <Choose page={page} sending={sending} />}
      {sending.notKept ? <Notice severity="stop"><p>{t('sending.notKept')}</p></Notice> : null}
      {sending.problem !== null && !ended && sending.files.length > 0 ? <Notice severity="caution"><p>{t('sending.waits')}</p></Notice> : null}
      {sending.files.length > 0 ? (
        <section className="stack">
          <h2>{t('sending.onTheWay', { n: sending.files.length })}</h2>
          <p className="faint">{t('sending.mayClose')}</p>
          <ul className="sent-files">{sending.files.map((one) => <li key={one.meta.id}><OnTheWay one={one} share={sending.shares.get(one.meta.id) ?? 0} onDrop={sending.drop} /></li>)}</ul>
        </section>
      ) : null}
      <Arrived page={page} />
    </div>
  );
}

function Choose({ page, sending }: { readonly page: Sending; readonly sending: SendingFiles }) {
  const { t, q } = useText();
  const [note, setNote] = useState('');
  const [refused, setRefused] = useState<readonly { readonly name: string; readonly why: Refusal }[]>([]);
  const [busy, setBusy] = useState(false);
  const choose = async (list: readonly File[]) => {
    const waiting = sending.files.reduce((sum, { file }) => sum + file.size, 0);
    const judged = list.map((file) => ({ file, why: refusalOf(file, page.bytesLeft - waiting) }));
    setRefused(judged.flatMap(({ file, why }) => (why === null ? [] : [{ name: file.name, why }])));
    setBusy(true);
    await sending.add(judged.flatMap(({ file, why }) => (why === null ? [file] : [])).slice(0, Math.max(0, page.filesLeft - sending.files.length)), note.trim());
    setBusy(false);
  };
  return (
    <section className="stack">
      <TextArea label={t('sending.line')} hint={t('sending.lineHint')} rows={2} maxLength={500} value={note} onChange={(event) => setNote(event.target.value)} optional />
      <FilePick label={t('sending.files')} hint={t('sending.limits', { files: page.filesLeft, until: q('dateTime', page.expiresAt) })} words={t(busy ? 'sending.keeping' : 'sending.choose')}
        size="crew" accept={accepted} disabled={busy} onPick={(file) => void choose([file])} onPickAll={(files) => void choose(files)} />
      {refused.map(({ name, why }) => <Notice key={name} severity="caution"><p>{t(`sending.not.${why}`, { name })}</p></Notice>)}
    </section>
  );
}

function OnTheWay({ one, share, onDrop }: { readonly one: WaitingFile; readonly share: number; readonly onDrop: (id: string) => void }) {
  const { t } = useText();
  const sentence = useProblemText();
  const percent = Math.floor(share * 100);
  return (
    <>
      <p>{one.name}</p>
      {one.refused === null
        ? <><progress max={100} value={percent} aria-label={one.name} /><span className="figure">{t('sending.percent', { n: percent })}</span></>
        : <><p>{sentence(new ApiProblem(one.refused as ErrorCode))}</p><Button size="crew" onClick={() => onDrop(one.meta.id)}>{t('sending.drop')}</Button></>}
    </>
  );
}

function Arrived({ page }: { readonly page: Sending }) {
  const { t, q } = useText();
  if (page.arrived.length === 0) return null;
  return (
    <section className="stack">
      <h2>{t('sending.arrived', { n: page.arrived.length })}</h2>
      <ul className="sent-files">
        {page.arrived.map(({ id, mediaType, note, receivedAt }) => (
          <li key={id}><p>{t(mediaType.startsWith('video/') ? 'sending.video' : 'sending.photo')}{note === '' ? '' : `: ${note}`}</p><span className="faint">{q('dateTime', receivedAt)}</span></li>
        ))}
      </ul>
    </section>
  );
}
