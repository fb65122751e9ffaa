import type { Job, Permit } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { CheckField, TextArea, TextField } from '../../../components/Field.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';
import { wallClockIn } from '../../../lib/zoneTime.ts';
import { useAnswerPermits } from '../api/permits.ts';

interface NotNeededProps {
  readonly job: Job;
  readonly kinds: readonly Permit['kind'][];
  readonly onDone: () => void;
}

/** One visit to the counter answers several: chosen one by one, with the reason that each keeps. */
export function NotNeeded({ job, kinds, onDone }: NotNeededProps) {
  const { t } = useText();
  const [lacks, setLacks] = useState(false);
  const [today] = useState(() => wallClockIn(job.timeZone, new Date()).slice(0, 10));
  const { write, busy, problem } = useAnswerPermits(onDone);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const field = fieldsOf(event.currentTarget);
    const chosen = kinds.filter((kind) => field(kind) !== '');
    setLacks(chosen.length === 0);
    if (chosen.length === 0) return;
    const said = { state: 'notNeeded' as const, number: '', note: field('note'), on: field('on') || null, expiresOn: null, photoId: null };
    write({ params: { jobId: job.id }, body: { answers: chosen.map((kind) => ({ kind, ...said })) } });
  };
  return (
    <form className="stack" onSubmit={submit}>
      <fieldset>
        <legend>{t('permits.severalWhy')}</legend>
        {kinds.map((kind) => <CheckField key={kind} name={kind} label={t(`permits.kind.${kind}`)} />)}
        {lacks ? <p className="field-error" role="alert">{t('permits.chosenNone')}</p> : null}
      </fieldset>
      <TextField label={t('permits.on.notNeeded')} name="on" type="date" defaultValue={today} max={today} />
      <TextArea label={t('permits.note.notNeeded')} name="note" required maxLength={500} rows={2} />
      <ProblemNotice problem={problem} />
      <Button type="submit" kind="main" size="crew" wide busy={busy}>{t('permits.severalRecord')}</Button>
    </form>
  );
}
