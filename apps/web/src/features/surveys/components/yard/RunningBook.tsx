import type { DesignDocument } from '@yardfall/calc';
import { useState } from 'react';
import { Button } from '../../../../components/Button.tsx';
import { Dialog } from '../../../../components/Dialog.tsx';
import { Photo } from '../../../../components/Photo.tsx';
import { PhotoPick } from '../../../../components/PhotoPick.tsx';
import { useText } from '../../../../lib/reader.tsx';
import { standingShots, type BookStanding, type FieldBook, type Shot } from '../../model/fieldBook.ts';
import type { YardBook } from '../../api/useYardBook.ts';
import { useJobPlan } from '../../api/useJobPlan.ts';
import { PinSheet } from './PinSheet.tsx';

interface RunningBookProps {
  readonly jobId: string;
  readonly book: FieldBook;
  readonly standing: BookStanding;
  readonly yard: YardBook;
}

/** The book as it runs, newest first: nothing is lost, a struck reading stays legible. */
export function RunningBook({ jobId, book, standing, yard }: RunningBookProps) {
  const { t } = useText();
  const [open, setOpen] = useState<string | null>(null);
  const plan = useJobPlan(jobId);
  const chosen = book.shots.find(({ id }) => id === open);
  return (
    <section className="stack" aria-label={t('surveys.yard.book')}>
      <h2>{t('surveys.yard.book')} <span className="faint">{t('surveys.yard.setUps', { n: standing.reduced.setUps, shots: standingShots(book).length })}</span></h2>
      {book.shots.length === 0 ? <p className="faint">{t('surveys.yard.bookEmpty')}</p> : (
        <ol className="running-book" reversed>
          {book.shots.toReversed().map((shot) => <li key={shot.id}><ShotRow shot={shot} standing={standing} onOpen={() => setOpen(shot.id)} /></li>)}
        </ol>
      )}
      <Dialog open={chosen !== undefined} title={chosen === undefined ? '' : t('surveys.yard.rowOf', { point: chosen.point, kind: `surveys.yard.kind.${chosen.kind}` })} onClose={() => setOpen(null)}>
        {chosen === undefined ? null : <ShotSheet jobId={jobId} shot={chosen} book={book} standing={standing} yard={yard} plan={plan} />}
      </Dialog>
    </section>
  );
}

function ShotRow({ shot, standing, onOpen }: { readonly shot: Shot; readonly standing: BookStanding; readonly onOpen: () => void }) {
  const { t, q } = useText();
  const level = standing.levelOf(shot.id);
  return (
    <button type="button" className={shot.struck ? 'running-row running-struck' : 'running-row'} onClick={onOpen}>
      <span className="running-point">{shot.point}</span>
      <span className="figure running-level">{level === null || shot.struck ? '' : q('level', level)}</span>
      <span className="running-read figure"><span>{t(`surveys.yard.kind.${shot.kind}`)} </span><span className="running-figure">{q('level', shot.value)}</span></span>
      <span className="faint running-where">
        {[shot.struck ? t('surveys.yard.struck') : '', shot.photoIds.length > 0 ? t('surveys.yard.photos', { n: shot.photoIds.length }) : '', shot.pin === null ? '' : t('surveys.yard.pinned'), t(shot.inOffice ? 'surveys.yard.inOffice' : 'surveys.yard.onPhone')].filter(Boolean).join(', ')}
      </span>
    </button>
  );
}

function ShotSheet({ jobId, shot, book, standing, yard, plan }: RunningBookProps & { readonly shot: Shot; readonly plan: DesignDocument | null }) {
  const { t, q } = useText();
  return (
    <div className="stack crew-form">
      <p className="figure">{q('levelAndTape', shot.value)}{shot.struck ? `, ${t('surveys.yard.struck')}` : ''}</p>
      <Button size="crew" kind={shot.struck ? 'plain' : 'danger'} wide onClick={() => yard.strike(shot.entry, !shot.struck)}>{t(shot.struck ? 'surveys.yard.unstrike' : 'surveys.yard.strike')}</Button>
      <PhotoPick label={t('surveys.yard.photo', { point: shot.point })} words={t(shot.photoIds.length === 0 ? 'ui.phone.takePhoto' : 'ui.phone.takeAnother')} onPick={(file) => yard.addPhoto(shot.entry, shot.point, file)} />
      {shot.photoIds.length === 0 ? null : <div className="photo-strip">{shot.photoIds.map((id) => <Photo key={id} jobId={jobId} photoId={id} alt={t('surveys.yard.photo', { point: shot.point })} />)}</div>}
      <PinSheet jobId={jobId} shot={shot} book={book} standing={standing} plan={plan} onPin={(pin) => yard.pin(shot.entry, pin)} />
    </div>
  );
}
