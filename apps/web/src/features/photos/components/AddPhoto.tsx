import type { PhotoMark, PhotoPlace } from '@yardfall/contracts';
import { lazy, Suspense, useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { CheckField, TextArea } from '../../../components/Field.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { PhotoPick } from '../../../components/PhotoPick.tsx';
import { useAddress } from '../../../hooks/useAddress.ts';
import { useKeepPhoto } from '../../../hooks/useRecord.ts';
import { fieldsOf } from '../../../lib/form.ts';
import { lookAt, type Look } from '../../../lib/look.ts';
import { useText } from '../../../lib/reader.tsx';
import { Doubts } from '../../../components/Doubts.tsx';
import { MarkPad } from '../../../components/photo/MarkPad.tsx';

/** Brings the drawing along. */
const PlaceFields = lazy(() => import('../../../components/photo/PlaceFields.tsx').then((one) => ({ default: one.PlaceFields })));

interface Taken {
  readonly file: File;
  readonly look: Look | null;
  readonly marks: readonly PhotoMark[];
}

/** Photos with a few words: what is seen, at which part, and whether the customer may see it. Several in a row share their words; each has marks of its own. */
export function AddPhoto({ jobId, onDone }: { readonly jobId: string; readonly onDone: () => void }) {
  const { t } = useText();
  const [taken, setTaken] = useState<readonly Taken[]>([]);
  const [place, setPlace] = useState<PhotoPlace>({ itemKey: null, part: null, point: null });
  const keep = useKeepPhoto(jobId);
  const add = async (files: readonly File[]) => {
    const looked = await Promise.all(files.map(async (file) => ({ file, look: await lookAt(file), marks: [] })));
    setTaken((now) => [...now, ...looked]);
  };
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const field = fieldsOf(event.currentTarget);
    const { itemKey, part, point } = place;
    const about = { itemKey, part, place: point === null ? null : place, note: field('note'), forCustomer: field('forCustomer') !== '' };
    for (const [at, { file, marks }] of taken.entries()) {
      const kept = await keep.mutateAsync({ file, ...about, marks }).catch(() => null); // `keep.error` says why
      if (kept === null) return setTaken(taken.slice(at)); // what was kept before is kept
    }
    onDone();
  };
  return (
    <form className="stack measure crew-form" onSubmit={(event) => void submit(event)} aria-label={t('photos.addNote')}>
      <div className="row">
        <PhotoPick label={t('photos.camera')} words={t(taken.length === 0 ? 'ui.phone.takePhoto' : 'ui.phone.takeAnother')} onPick={(file) => void add([file])} />
        <PhotoPick fromStore label={t('photos.store')} words={t('ui.phone.choosePhoto')} onPick={(file) => void add([file])} onPickAll={(files) => void add(files)} />
      </div>
      {taken.length === 0 ? null : <p role="status">{t('photos.chosen', { n: taken.length })}</p>}
      {taken.map((one, at) => (
        <OneTaken key={`${one.file.name}${String(at)}`} one={one} alone={taken.length === 1} onDrop={() => setTaken(taken.filter((other) => other !== one))} onMarks={(marks) => setTaken(taken.map((other) => (other === one ? { ...one, marks } : other)))} />
      ))}
      <TextArea label={t('photos.note')} name="note" maxLength={1000} rows={2} optional />
      <Suspense fallback={null}><PlaceFields jobId={jobId} place={place} onPlace={setPlace} /></Suspense>
      <CheckField name="forCustomer" label={t('photos.forCustomer')} />
      <KeepProblem problem={keep.error} />
      <div className="row">
        <Button type="submit" kind="main" size="crew" disabled={taken.length === 0 || keep.isPending}>{t(taken.length > 1 ? 'photos.keepAll' : 'photos.keep')}</Button>
        <Button kind="text" onClick={onDone}>{t('ui.cancel')}</Button>
      </div>
    </form>
  );
}

interface OneTakenProps {
  readonly one: Taken;
  readonly alone: boolean;
  readonly onDrop: () => void;
  readonly onMarks: (marks: readonly PhotoMark[]) => void;
}

/** A photo before it is kept: whether it should be looked at again, and what is drawn over it. */
function OneTaken({ one: { file, look, marks }, alone, onDrop, onMarks }: OneTakenProps) {
  const { t } = useText();
  const src = useAddress(file);
  if (look === null) return null;
  const pad = <MarkPad src={src} marks={marks} onMarks={onMarks} />;
  return (
    <>
      <Doubts look={look} onDrop={onDrop} />
      {alone ? pad : <details className="fold"><summary>{t('photos.markThis', { name: file.name })}</summary>{pad}</details>}
    </>
  );
}
