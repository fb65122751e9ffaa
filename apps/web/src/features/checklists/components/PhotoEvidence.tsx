import { itemText } from '@yardfall/contracts';
import { useState } from 'react';
import { Photo } from '../../../components/Photo.tsx';
import { CheckField } from '../../../components/Field.tsx';
import { PhotoPick } from '../../../components/PhotoPick.tsx';
import { useText } from '../../../lib/reader.tsx';
import { asksPhoto, factsOf } from '../model/evidence.ts';
import type { EvidenceProps } from './Evidence.tsx';

export function PhotoEvidence({ list, view, record, companions = [] }: EvidenceProps) {
  const { t, say } = useText();
  const taken = factsOf(view, 'photo');
  const { requirement } = view.item;
  const [without, setWithout] = useState<readonly string[]>([]);
  const shown = companions.filter(asksPhoto);
  const also = shown.filter(({ item }) => !without.includes(item.key));
  const what = say(itemText(requirement, 'photo'), requirement.params);
  return (
    <div className="stack evidence">
      <PhotoPick label={t('checklists.photoCount', { taken: taken.length, needed: Math.max(requirement.minPhotos, 1) })} hint={what} disabled={record.busy}
        words={t(taken.length === 0 ? 'ui.phone.takePhoto' : 'ui.phone.takeAnother')} onPick={(file) => record.addPhoto(file, also)} />
      {shown.map(({ item }) => (
        <CheckField key={item.key} label={t('checklists.alsoShows', { what: say(itemText(item.requirement, 'photo'), item.requirement.params) })} checked={!without.includes(item.key)}
          onChange={(event) => setWithout(event.currentTarget.checked ? without.filter((one) => one !== item.key) : [...without, item.key])} />
      ))}
      {taken.length > 0 ? <div className="photo-strip">{taken.map((fact) => <Photo key={fact.photoId} jobId={list.jobId} photoId={fact.photoId} alt={t('photos.alt', { what, at: fact.takenAt })} />)}</div> : null}
    </div>
  );
}
