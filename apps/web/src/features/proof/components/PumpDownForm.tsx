import type { DesignDocument, Pump } from '@yardfall/calc';
import { useEffect, useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Cautions } from '../../../components/Cautions.tsx';
import { TextArea } from '../../../components/Field.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { Select } from '../../../components/Select.tsx';
import { fieldsOf } from '../../../lib/form.ts';
import { keep, kept } from '../../../lib/keep.ts';
import { useText } from '../../../lib/reader.tsx';
import { useRecordProof } from '../api/proof.ts';
import { basinOf, emptyRuns, finishedRuns, withRun, type TypedRun } from '../model/runs.ts';
import { RunFields } from './RunFields.tsx';

interface PumpDownFormProps {
  readonly jobId: string;
  readonly document: DesignDocument;
  readonly pumps: readonly Pump[];
  readonly onDone: () => void;
}

/** Three runs between two marks; what is typed stays on this phone until the office has it. */
export function PumpDownForm({ jobId, document, pumps, onDone }: PumpDownFormProps) {
  const { t } = useText();
  const [pump, setPump] = useState(pumps[0]?.id ?? '');
  const basin = basinOf(document, pumps.find(({ id }) => id === pump));
  const draft = `pumpDown.${jobId}.${pump}`;
  const [runs, setRuns] = useState<readonly TypedRun[]>(() => (kept(draft) as readonly TypedRun[] | null) ?? emptyRuns(basin));
  useEffect(() => {
    keep(draft, runs);
  }, [draft, runs]);
  const { write, busy, problem } = useRecordProof(jobId, () => {
    keep(draft, null);
    onDone();
  });
  const whole = finishedRuns(runs);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    if (whole) write({ pump, runs: whole, note: fieldsOf(event.currentTarget)('note') });
  };
  return (
    <form className="stack" onSubmit={submit} aria-label={t('proof.title')}>
      <p className="measure">{t('proof.how')}</p>
      {pumps.length > 1 ? <Select label={t('proof.pump')} choices={pumps.map(({ id, name }) => ({ value: id, label: name }))} value={pump} onChange={setPump} /> : null}
      <div className="proof-runs">
        {runs.map((run, index) => <RunFields key={index} number={index + 1} run={run} basin={basin} onChange={(change) => setRuns(withRun(runs, index, change))} />)}
      </div>
      <TextArea label={t('proof.note')} name="note" rows={2} maxLength={1000} optional />
      <Cautions which={['pit']} />
      <ProblemNotice problem={problem} />
      <div className="row">
        <Button type="submit" kind="main" size="crew" disabled={whole === null || busy} busy={busy}>{t('proof.record')}</Button>
        <Button kind="text" onClick={onDone}>{t('ui.cancel')}</Button>
      </div>
    </form>
  );
}
