import type { Job, Permit, PermitAnswer } from '@yardfall/contracts';
import { FindingMark } from '../../../components/FindingMark.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { Photo } from '../../../components/Photo.tsx';
import { lastAndRefused } from '../../../lib/answersHere.ts';
import { useText } from '../../../lib/reader.tsx';
import { hereWords, type ApprovalHere } from '../model/here.ts';

interface StandsProps {
  readonly job: Job;
  readonly answer: PermitAnswer | null;
  readonly gap: Permit['gap'];
  /** What is on this phone of it. */
  readonly kept: readonly ApprovalHere[];
  /** The day where the property stands. */
  readonly today: string;
  /** Code of what it is about. */
  readonly name: string;
}

/** Where one approval stands, what shows it, and whether it holds the release. */
export function Stands({ job, answer, gap, kept, today, name }: StandsProps) {
  const { t } = useText();
  const zone = { timeZone: job.timeZone };
  const photo = (photoId: string | null) => (photoId === null ? null : <Photo jobId={job.id} photoId={photoId} alt={t('permits.photoOf', { permit: name })} />);
  return (
    <span>
      {answer === null ? t('permits.state.unknown') : <Said said={answer} />}
      {answer === null ? null : <span className="faint permit-line">{t('locates.saidBy', { at: answer.at, by: answer.by }, zone)}</span>}
      {photo(answer?.photoId ?? null)}
      {lastAndRefused(kept).map((entry) => (
        <Notice key={entry.id} severity={entry.refused === null ? 'caution' : 'stop'}>
          <p><strong><Said said={entry.answer.said} /></strong></p>
          <p>{t(hereWords(entry, today))}</p>
          {photo(entry.answer.said.photoId)}
        </Notice>
      ))}
      {gap === null ? null : <span className="permit-gap"><FindingMark severity={gap === 'refused' ? 'stop' : 'caution'} /> {t('permits.holds', { why: `permits.gap.${gap}` })}</span>}
    </span>
  );
}

/** An answer in one line with the paper that shows it, and below it what was noted. */
function Said({ said: { state, number, on, expiresOn, note } }: { readonly said: Pick<PermitAnswer, 'state' | 'number' | 'on' | 'expiresOn' | 'note'> }) {
  const { t } = useText();
  const facts = [
    t(`permits.state.${state}`), number === '' ? '' : t('permits.numberIs', { number }), on === null ? '' : t('permits.onIs', { on }), expiresOn === null ? '' : t('permits.expiresIs', { expiresOn }),
  ].filter((text) => text !== '');
  return <>{facts.join(', ')}{note === '' ? null : <span className="permit-line">{note}</span>}</>;
}
