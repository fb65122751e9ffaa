import { itemText } from '@yardfall/contracts';
import { Photo } from '../../../components/Photo.tsx';
import { PhotoPick } from '../../../components/PhotoPick.tsx';
import { useText } from '../../../lib/reader.tsx';
import { factsOf } from '../model/evidence.ts';
import type { EvidenceProps } from './Evidence.tsx';

export function PhotoEvidence({ list, view, record }: EvidenceProps) {
  const { t, say } = useText();
  const taken = factsOf(view, 'photo');
  const { requirement } = view.item;
  const what = say(itemText(requirement, 'photo'), requirement.params);
  return (
    <div className="stack evidence">
      <PhotoPick label={t('checklists.photoCount', { taken: taken.length, needed: Math.max(requirement.minPhotos, 1) })} hint={what} disabled={record.busy}
        words={t(taken.length === 0 ? 'ui.phone.takePhoto' : 'ui.phone.takeAnother')} onPick={record.addPhoto} />
      {taken.length > 0 ? <div className="photo-strip">{taken.map((fact) => <Photo key={fact.photoId} jobId={list.jobId} photoId={fact.photoId} alt={t('photos.alt', { what, at: fact.takenAt })} />)}</div> : null}
    </div>
  );
}
