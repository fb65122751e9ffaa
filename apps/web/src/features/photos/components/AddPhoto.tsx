import type { PhotoMark } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { CheckField, TextArea } from '../../../components/Field.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { PartSelect } from '../../../components/PartSelect.tsx';
import { PhotoPick } from '../../../components/PhotoPick.tsx';
import { useKeepPhoto } from '../../../hooks/useRecord.ts';
import { fieldsOf } from '../../../lib/form.ts';
import { lookAt, type Look } from '../../../lib/look.ts';
import { useText } from '../../../lib/reader.tsx';
import { Doubts } from './Doubts.tsx';
import { MarkPad } from './MarkPad.tsx';

interface Taken {
  readonly file: File;
  readonly look: Look | null;
}

/** Photos with a few words: what is seen, at which part, and whether the customer may see it. Several in a row share their words; a single one can be marked. */
export function AddPhoto({ jobId, onDone }: { readonly jobId: string; readonly onDone: () => void }) {
  const { t } = useText();
  const [taken, setTaken] = useState<readonly Taken[]>([]);
  const [marks, setMarks] = useState<readonly PhotoMark[]>([]);
  const [part, setPart] = useState<string | null>(null);
  const keep = useKeepPhoto(jobId);
  const add = async (files: readonly File[]) => {
    const looked = await Promise.all(files.map(async (file) => ({ file, look: await lookAt(file) })));
    setTaken((now) => [...now, ...looked]);
  };
  const submit = async (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const field = fieldsOf(event.currentTarget);
    const about = { itemKey: null, part, note: field('note'), forCustomer: field('forCustomer') !== '' };
    for (const [at, { file }] of taken.entries()) {
      const kept = await keep.mutateAsync({ file, ...about, marks: taken.length === 1 ? marks : [] }).catch(() => null);
      if (kept === null) return setTaken(taken.slice(at)); // what was kept before is kept
    }
    onDone();
  };
  const [only] = taken;
  return (
    <form className="stack measure crew-form" onSubmit={(event) => void submit(event)} aria-label={t('photos.addNote')}>
      <div className="row">
        <PhotoPick label={t('photos.camera')} words={t(taken.length === 0 ? 'ui.phone.takePhoto' : 'ui.phone.takeAnother')} onPick={(file) => void add([file])} />
        <PhotoPick fromStore label={t('photos.store')} words={t('ui.phone.choosePhoto')} onPick={(file) => void add([file])} onPickAll={(files) => void add(files)} />
      </div>
      {taken.length === 0 ? null : <p role="status">{t('photos.chosen', { n: taken.length })}</p>}
      {taken.map(({ file, look }, at) => <Doubts key={`${file.name}${String(at)}`} look={look} onDrop={() => setTaken(taken.filter((one) => one.file !== file))} />)}
      {only?.look && taken.length === 1 ? <MarkPad file={only.file} width={only.look.width} height={only.look.height} marks={marks} onMarks={setMarks} /> : null}
      <TextArea label={t('photos.note')} name="note" maxLength={1000} rows={2} optional />
      <PartSelect jobId={jobId} value={part} onChange={setPart} />
      <CheckField name="forCustomer" label={t('photos.forCustomer')} />
      <KeepProblem problem={keep.error} />
      <div className="row">
        <Button type="submit" kind="main" size="crew" disabled={taken.length === 0 || keep.isPending}>{t(taken.length > 1 ? 'photos.keepAll' : 'photos.keep')}</Button>
        <Button kind="text" onClick={onDone}>{t('ui.cancel')}</Button>
      </div>
    </form>
  );
}
