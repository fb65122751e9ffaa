import { found, type FoundReport } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { Notice } from '../../../components/Notice.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useMinute } from '../../../hooks/useMinute.ts';
import { read } from '../../../lib/query.ts';
import { useText } from '../../../lib/reader.tsx';

/** As long as a working day (ours). */
const isNewsFor = 12 * 3_600_000;

/** Who stopped the work and waits is told the answer where it was told that the work is stopped. */
export function Answered({ jobId, timeZone }: { readonly jobId: string; readonly timeZone: string }) {
  const { t } = useText();
  const memberId = useMe().me?.id;
  const now = useMinute();
  const { data } = useQuery(read(found.list, { params: { jobId } }));
  const isNews = ({ reportedById, answeredAt }: FoundReport) => reportedById === memberId && answeredAt !== null && now - Date.parse(answeredAt) < isNewsFor;
  return (data?.data.items ?? []).filter(isNews).map(({ id, kind, answer, answeredBy, answeredAt, draft }) => (
    <Notice key={id} title={t('found.mayGoOn', { kind: t(`found.kind.${kind}`) })}>
      <p>{answer ?? (draft === null ? null : t('found.answeredByRevision', { name: draft.designName, number: draft.number }))}</p>
      <p className="faint">{t('found.answered', { by: answeredBy ?? '', at: answeredAt ?? '' }, { timeZone })}</p>
    </Notice>
  ));
}
