import type { Job, Permit, PermitAnswer } from '@yardfall/contracts';
import { FindingMark } from '../../../components/FindingMark.tsx';
import { Photo } from '../../../components/Photo.tsx';
import { useText } from '../../../lib/reader.tsx';

interface StandsProps {
  readonly job: Job;
  readonly answer: PermitAnswer | null;
  readonly gap: Permit['gap'];
  /** Code of what it is about. */
  readonly name: string;
}

/** Where one approval stands, what shows it, and whether it holds the release. */
export function Stands({ job, answer, gap, name }: StandsProps) {
  const { t } = useText();
  const zone = { timeZone: job.timeZone };
  const facts = answer === null ? [t('permits.state.unknown')] : [
    t(`permits.state.${answer.state}`),
    answer.number === '' ? '' : t('permits.numberIs', { number: answer.number }),
    answer.on === null ? '' : t('permits.onIs', { on: answer.on }),
    answer.expiresOn === null ? '' : t('permits.expiresIs', { expiresOn: answer.expiresOn }),
  ].filter((text) => text !== '');
  return (
    <span>
      {facts.join(', ')}
      {answer === null || answer.note === '' ? null : <span className="permit-line">{answer.note}</span>}
      {answer === null ? null : <span className="faint permit-line">{t('locates.saidBy', { at: answer.at, by: answer.by }, zone)}</span>}
      {answer?.photoId ? <Photo jobId={job.id} photoId={answer.photoId} alt={t('permits.photoOf', { permit: name })} /> : null}
      {gap === null ? null : <span className="permit-gap"><FindingMark severity={gap === 'refused' ? 'stop' : 'caution'} /> {t('permits.holds', { why: `permits.gap.${gap}` })}</span>}
    </span>
  );
}
