import { disputeOf, settledBy, type FieldFact } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { Photo } from '../../../components/Photo.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useText } from '../../../lib/reader.tsx';
import { factsOf } from '../model/evidence.ts';
import type { EvidenceProps } from './Evidence.tsx';
import { useFactWords } from './Record.tsx';

/** The answers that stand against each other, side by side; naming the true one settles it, with a second look. */
export function Disputed({ list, view, record }: EvidenceProps) {
  const { t } = useText();
  const { may } = useMe();
  const words = useFactWords(view);
  const sides = view.state === 'disputed' ? disputeOf(view.item.requirement, view.facts) : [];
  if (sides.length < 2) return null;
  const phones = [...new Set(sides.map(({ deviceId }) => deviceId))];
  return (
    <Notice severity="stop" title={t('checklists.dispute.title')}>
      <div className="dispute">
        {sides.map((side) => (
          <div key={side.id} className="dispute-side">
            <p className="notice-title">{words(side)}</p>
            <Told list={list} view={view} record={record} side={side} phone={phones.indexOf(side.deviceId) + 1} />
            {may('checklists.record') ? <Button size="crew" wide disabled={record.busy} onClick={() => record.record(settledBy(side, t('checklists.dispute.note', { answer: words(side) })))}>{t('checklists.dispute.name')}</Button> : null}
          </div>
        ))}
      </div>
      <p className="faint">{t('checklists.dispute.how')}</p>
    </Notice>
  );
}

/** Who said it, when, on which phone, and what that phone photographed of the step. */
function Told({ list, view, side, phone }: EvidenceProps & { readonly side: FieldFact; readonly phone: number }) {
  const { t, q } = useText();
  const { me } = useMe();
  const by = view.item.facts.find(({ fact }) => fact.id === side.id)?.by ?? me?.name ?? '';
  const photo = factsOf(view, 'photo').findLast(({ deviceId }) => deviceId === side.deviceId);
  return (
    <>
      <p>{t('checklists.dispute.told', { by, phone, at: q('dateTime', side.deviceTime) })}</p>
      {photo === undefined ? <p className="faint">{t('checklists.dispute.noPhoto')}</p> : <Photo jobId={list.jobId} photoId={photo.photoId} alt={t('checklists.dispute.photo', { by })} />}
    </>
  );
}
