import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { CheckField, TextArea } from '../../../components/Field.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { PartSelect } from '../../../components/PartSelect.tsx';
import { PhotoPick } from '../../../components/PhotoPick.tsx';
import { useKeepPhoto } from '../../../hooks/useRecord.ts';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';

/** A photo with a few words: what is seen, at which part, and whether the customer may see it. */
export function AddPhoto({ jobId, onDone }: { readonly jobId: string; readonly onDone: () => void }) {
  const { t } = useText();
  const [file, setFile] = useState<File | null>(null);
  const [part, setPart] = useState<string | null>(null);
  const keep = useKeepPhoto(jobId);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const field = fieldsOf(event.currentTarget);
    if (file) keep.mutate({ file, itemKey: null, part, note: field('note'), forCustomer: field('forCustomer') !== '' }, { onSuccess: onDone });
  };
  return (
    <form className="stack measure crew-form" onSubmit={submit} aria-label={t('photos.addNote')}>
      <div className="row">
        <PhotoPick label={t('photos.camera')} onPick={setFile} />
        <PhotoPick fromStore label={t('photos.store')} words={t('ui.phone.choosePhoto')} onPick={setFile} />
      </div>
      <TextArea label={t('photos.note')} name="note" maxLength={1000} rows={2} optional />
      <PartSelect jobId={jobId} value={part} onChange={setPart} />
      <CheckField name="forCustomer" label={t('photos.forCustomer')} />
      <KeepProblem problem={keep.error} />
      <div className="row">
        <Button type="submit" kind="main" size="crew" disabled={file === null || keep.isPending}>{t('photos.keep')}</Button>
        <Button kind="text" onClick={onDone}>{t('ui.cancel')}</Button>
      </div>
    </form>
  );
}
