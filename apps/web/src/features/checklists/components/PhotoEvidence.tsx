import { itemText, seenTogether } from '@yardfall/contracts';
import { Button } from '../../../components/Button.tsx';
import { Doubts } from '../../../components/Doubts.tsx';
import { Photo } from '../../../components/Photo.tsx';
import { PhotoPick } from '../../../components/PhotoPick.tsx';
import { usePhotosNow } from '../../../hooks/usePhotosNow.ts';
import { useText } from '../../../lib/reader.tsx';
import { useTaking } from '../api/useTaking.ts';
import { asksPhoto, countedPhotos, factsOf } from '../model/evidence.ts';
import { mayBeFilmed } from '../model/filmed.ts';
import { Burst } from './Burst.tsx';
import type { EvidenceProps } from './Evidence.tsx';
import { FilmIt } from './FilmIt.tsx';

/** What the picture must show, the camera as the largest control, and what was taken. */
export function PhotoEvidence({ list, view, record, companions = [] }: EvidenceProps) {
  const { t, say } = useText();
  const { doubted, looking, take, keep, drop } = useTaking(record);
  const taken = factsOf(view, 'photo');
  const known = usePhotosNow(list.jobId);
  const kinds = new Map(known.map(({ id, kind }) => [id, kind]));
  const ready = new Set(known.flatMap((photo) => (photo.ready ? [photo.id] : [])));
  const { requirement } = view.item;
  const needed = Math.max(requirement.minPhotos, 1);
  const what = say(itemText(requirement, 'photo'), requirement.params);
  const busy = record.busy || looking;
  const count = countedPhotos(view);
  const isEnough = count >= needed;
  return (
    <div className="stack evidence photo-evidence">
      <PhotoPick main={!isEnough} label={t('checklists.photoCount', { taken: count, needed })} hint={<>{t('checklists.photoShows')} <strong>{what}</strong></>} disabled={busy}
        words={t(count === 0 ? 'ui.phone.takePhoto' : 'ui.phone.takeAnother')} onPick={(file) => take([file])} />
      <Burst taken={count} needed={needed} disabled={record.busy} onShot={(file) => take([file])} />
      <PhotoPick fromStore quiet label={t('photos.store')} words={t('ui.phone.choosePhoto')} disabled={busy} onPick={(file) => take([file])} onPickAll={take} />
      {mayBeFilmed(view.item.template) ? <FilmIt disabled={busy} onFilm={(file) => take([file])} /> : null}
      {looking ? <p className="faint" role="status">{t('checklists.lookingAt')}</p> : null}
      {doubted.map((one) => (
        <div key={one.id} className="doubted">
          <Photo jobId={list.jobId} photoId={one.id} alt={t('photos.alt', { what, at: one.takenAt })} />
          <Doubts look={one.look} onKeep={() => keep(one)} onDrop={() => drop(one)} />
        </div>
      ))}
      {taken.length > 0 ? <div className="photo-strip">{taken.map((fact) => <Photo key={`${fact.photoId} ${String(ready.has(fact.photoId))}`} jobId={list.jobId} photoId={fact.photoId} kind={kinds.get(fact.photoId) ?? 'picture'} alt={t('photos.alt', { what, at: fact.takenAt })} />)}</div> : null}
      <AlsoShows view={view} record={record} companions={companions} />
    </div>
  );
}

/** The last picture may prove steps that are seen with this one; each only when a person says so. */
function AlsoShows({ view, record, companions = [] }: Pick<EvidenceProps, 'view' | 'record' | 'companions'>) {
  const { t, say } = useText();
  const last = factsOf(view, 'photo').at(-1);
  if (last === undefined) return null;
  const open = companions.filter((one) => asksPhoto(one) && seenTogether(view.item, one.item) && one.missing.some((mark) => mark.startsWith('photo:')) && factsOf(one, 'photo').every(({ photoId }) => photoId !== last.photoId));
  return open.map((one) => (
    <Button key={one.item.key} size="crew" wide data-also={one.item.key} disabled={record.busy} onClick={() => record.count({ id: last.photoId, takenAt: last.takenAt }, one)}>
      {t('checklists.alsoShows', { what: say(itemText(one.item.requirement, 'photo'), one.item.requirement.params) })}
    </Button>
  ));
}
