import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { TextArea, TextField } from '../../../components/Field.tsx';
import { FilePick } from '../../../components/FilePick.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useText } from '../../../lib/reader.tsx';
import { useTypeRain, useUploadRain } from '../api/rain.ts';
import { readTyped } from '../model/typed.ts';

/** Upload the file of the NOAA Atlas 14 server, or type a table. */
export function AddRain({ jobId }: { readonly jobId: string }) {
  const { t } = useText();
  const upload = useUploadRain(jobId);
  return (
    <div className="stack">
      <FilePick label={t('rain.noaa')} hint={t('rain.noaaHint')} accept=".csv,text/csv,text/plain" words={t('rain.noaaPick')} disabled={upload.isPending}
        onPick={(file) => upload.mutate({ name: file.name.slice(0, 80), file })} />
      <ProblemNotice problem={upload.error} />
      <details className="fold"><summary>{t('rain.type')}</summary><TypeRain jobId={jobId} /></details>
    </div>
  );
}

function TypeRain({ jobId }: { readonly jobId: string }) {
  const { t, units } = useText();
  const store = useTypeRain(jobId);
  const [typed, setTyped] = useState({ name: '', source: '', depths: '' });
  const read = readTyped(typed.depths, typed.name, typed.source, units === 'us' ? 25.4 : 1);
  const bad = typed.depths.trim() !== '' && 'line' in read;
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if ('table' in read) store.mutate({ name: typed.name, table: { ...read.table, durations: [...read.table.durations], returnPeriods: [...read.table.returnPeriods], depths: read.table.depths.map((row) => [...row]), lower: null, upper: null } });
  };
  return (
    <form className="stack rain-typed" onSubmit={submit}>
      <TextField label={t('rain.name')} required value={typed.name} onChange={(event) => setTyped({ ...typed, name: event.target.value })} />
      <TextField label={t('rain.source')} hint={t('rain.sourceHint')} required value={typed.source} onChange={(event) => setTyped({ ...typed, source: event.target.value })} />
      <TextArea label={t(units === 'us' ? 'rain.depthsTypedUs' : 'rain.depthsTypedMetric')} hint={t('rain.depthsTypedHint')} rows={10} required value={typed.depths}
        error={bad ? t('rain.lineUnread', { line: read.line }) : undefined} onChange={(event) => setTyped({ ...typed, depths: event.target.value })} />
      <ProblemNotice problem={store.error} />
      <div className="row"><Button type="submit" busy={store.isPending} disabled={!('table' in read)}>{t('rain.store')}</Button></div>
    </form>
  );
}
