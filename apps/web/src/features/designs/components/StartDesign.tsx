import type { Design } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Empty } from '../../../components/Empty.tsx';
import { TextField } from '../../../components/Field.tsx';
import { FilePick } from '../../../components/FilePick.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useCreateDesign } from '../api/designs.ts';
import { readDocumentFile } from '../model/documentFile.ts';

interface StartDesignProps {
  readonly jobId: string;
  readonly designs: readonly Design[];
  readonly onStarted: (revisionId: string) => void;
}

/** A new variant from the levels and the rain of the job, or from a design document in a file. */
export function StartDesign({ jobId, designs, onStarted }: StartDesignProps) {
  const { t } = useText();
  const create = useCreateDesign(jobId);
  const [name, setName] = useState('');
  const [unread, setUnread] = useState<{ readonly code: string; readonly path: string } | null>(null);
  const named = name.trim() === '' ? t('designs.variantName', { n: designs.length + 1 }) : name.trim();
  const start = (document: Parameters<typeof create.mutate>[0]['document']) => create.mutate({ name: named, document, fromRevisionId: null }, { onSuccess: ({ data }) => { setName(''); onStarted(data.id); } });
  const submit = (event: FormEvent) => { event.preventDefault(); start(null); };
  const pick = async (file: File) => {
    const read = await readDocumentFile(file);
    setUnread(read.ok ? null : read);
    if (read.ok) start(read.document);
  };
  const form = (
    <form className="stack" onSubmit={submit}>
      <TextField label={t('designs.variant')} hint={t('designs.variantHint')} optional value={name} onChange={(event) => setName(event.target.value)} />
      <div className="row"><Button type="submit" kind={designs.length === 0 ? 'main' : 'plain'} busy={create.isPending}>{t('designs.start')}</Button></div>
      <FilePick label={t('designs.fromFile')} accept=".json,application/json" words={t('designs.fromFilePick')} onPick={(file) => void pick(file)} />
      {unread ? <Notice severity="stop"><p>{t('designs.fileUnread', { path: unread.path === '' ? '-' : unread.path })}</p></Notice> : null}
      <ProblemNotice problem={create.error} />
    </form>
  );
  if (designs.length === 0) return <Empty what={t('designs.none')} why={t('designs.noneWhy')} step={form} />;
  return <details className="fold"><summary>{t('designs.another')}</summary>{form}</details>;
}
