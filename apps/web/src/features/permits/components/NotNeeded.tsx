import type { Job, Permit } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { CheckField, TextArea, TextField } from '../../../components/Field.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { useKeepAnswers } from '../../../hooks/useKeepAnswers.ts';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';
import { wallClockIn } from '../../../lib/zoneTime.ts';

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
  const { keep, busy, problem } = useKeepAnswers(job.id, onDone);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const field = fieldsOf(event.currentTarget);
    const chosen = kinds.filter((kind) => field(kind) !== '');
    setLacks(chosen.length === 0);
    if (chosen.length === 0) return;
    const said = { state: 'notNeeded' as const, number: '', note: field('note'), on: field('on') || null, expiresOn: null, photoId: null };
    keep(chosen.map((kind) => ({ what: 'permit' as const, said: { kind, ...said } })));
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
      <KeepProblem problem={problem} />
      <Button type="submit" kind="main" size="crew" wide busy={busy}>{t('permits.severalRecord')}</Button>
    </form>
  );
}
