import type { Revision } from '@yardfall/contracts';
import { useState } from 'react';
import { Button } from '../../../../components/Button.tsx';
import { FilePick } from '../../../../components/FilePick.tsx';
import { ProblemNotice } from '../../../../components/Notice.tsx';
import { NumberField } from '../../../../components/NumberField.tsx';
import { Select } from '../../../../components/Select.tsx';
import { useText } from '../../../../lib/reader.tsx';
import { useAskRecord, useRainRecords, useUploadRecord } from '../../api/studies.ts';

/** A rain record of the company, or a new one from a file, to be run through the design. */
export function AskRecord({ jobId, revision }: { readonly jobId: string; readonly revision: Revision }) {
  const { t } = useText();
  const records = useRainRecords();
  const upload = useUploadRecord();
  const { write, busy, problem } = useAskRecord();
  const [chosen, setChosen] = useState<string | null>(null);
  const [reported, setReported] = useState<number | null>(null);
  const items = records.data?.data.items ?? [];
  const record = items.find(({ id }) => id === chosen) ?? items[0] ?? null;
  const start = () => { if (record) write({ params: { jobId, revisionId: revision.id }, body: { recordId: record.id, reportedPerYear: reported !== null && reported > 0 ? reported : null } }); };
  return (
    <div className="stack">
      {items.length > 0 ? (
        <Select label={t('studies.record.which')} value={record?.id ?? ''} onChange={setChosen}
          choices={items.map((item) => ({ value: item.id, label: t('studies.record.says', { name: item.name, from: item.from, to: item.to, step: item.step, hours: Math.round(item.missingHours) }) }))} />
      ) : null}
      <FilePick label={t('studies.record.upload')} hint={t('studies.record.uploadHint')} accept=".csv,text/csv,text/plain" disabled={upload.isPending} onPick={(file) => upload.mutate({ name: file.name.replace(/\.\w+$/, '').slice(0, 80) || file.name, file })} />
      <ProblemNotice problem={upload.error ?? records.error} />
      <NumberField label={t('studies.record.reported')} hint={t('studies.record.reportedHint')} optional value={reported} onChange={setReported} />
      <ProblemNotice problem={problem} />
      <div className="row"><Button kind="main" busy={busy} disabled={record === null} onClick={start}>{t('studies.record.start')}</Button></div>
    </div>
  );
}
