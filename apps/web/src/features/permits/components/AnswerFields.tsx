import { evidenceLacking, type Job, type PermitState, permitStates } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Choices } from '../../../components/Choices.tsx';
import { TextArea, TextField } from '../../../components/Field.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { PhotoField } from '../../../components/PhotoField.tsx';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';
import { wallClockIn } from '../../../lib/zoneTime.ts';

export interface Said {
  readonly state: PermitState;
  readonly number: string;
  readonly note: string;
  readonly on: string | null;
  readonly expiresOn: string | null;
  readonly photoId: string | null;
}

interface AnswerFieldsProps {
  readonly job: Job;
  /** Code of what is answered. */
  readonly about: string;
  readonly busy: boolean;
  readonly problem: unknown;
  readonly onAnswer: (said: Said) => void;
}

const states = permitStates.filter((state) => state !== 'unknown');

/** One answer with what shows it. What it lacks is said before it is kept. */
export function AnswerFields({ job, about, busy, problem, onAnswer }: AnswerFieldsProps) {
  const { t } = useText();
  const [state, setState] = useState<Exclude<PermitState, 'unknown'> | null>(null);
  const [lacks, setLacks] = useState<readonly string[]>([]);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    if (state === null) return;
    const field = fieldsOf(event.currentTarget);
    const orNull = (name: string) => field(name) || null;
    const said = { state, number: field('number'), note: field('note'), on: orNull('on'), expiresOn: orNull('expiresOn'), photoId: orNull('photoId') };
    const missing = evidenceLacking(said);
    setLacks(missing);
    if (missing.length === 0) onAnswer(said);
  };
  const missing = lacks.map((what) => t(what === 'number' ? 'permits.lacks.number' : what === 'on' ? 'permits.lacks.on' : 'permits.lacks.note')).join(', ');
  return (
    <form className="stack" onSubmit={submit}>
      <Choices look="crew" label={t('permits.stands')} value={state} onChange={setState} choices={states.map((value) => ({ value, label: t(`permits.state.${value}`) }))} />
      {state === null ? null : <Details key={state} job={job} about={about} state={state} />}
      {lacks.length > 0 ? <p className="field-error" role="alert">{t('permits.lacks', { what: missing })}</p> : null}
      <KeepProblem problem={problem} />
      <Button type="submit" kind="main" size="crew" wide disabled={state === null || busy} busy={busy}>{t('permits.record')}</Button>
    </form>
  );
}

function Details({ job, about, state }: Pick<AnswerFieldsProps, 'job' | 'about'> & { readonly state: Exclude<PermitState, 'unknown'> }) {
  const { t } = useText();
  const [today] = useState(() => wallClockIn(job.timeZone, new Date()).slice(0, 10));
  const isPaper = state === 'applied' || state === 'granted';
  const note = state === 'notNeeded' || state === 'refused' ? state : 'other';
  return (
    <>
      {isPaper ? <TextField label={t('permits.number')} name="number" maxLength={60} autoComplete="off" optional={state === 'granted'} /> : null}
      <TextField label={t(`permits.on.${state}`)} name="on" type="date" defaultValue={today} max={today} />
      {state === 'granted' ? <TextField label={t('permits.expires')} hint={t('permits.expiresHint')} name="expiresOn" type="date" optional /> : null}
      {isPaper ? <PhotoField jobId={job.id} timeZone={job.timeZone} label={t('permits.photo')} note={t('permits.photoOf', { permit: about })} /> : null}
      <TextArea label={t(`permits.note.${note}`)} hint={state === 'granted' ? t('permits.noteHint') : undefined} name="note" maxLength={500} rows={2} optional={isPaper} />
    </>
  );
}
