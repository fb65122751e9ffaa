import type { Job } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { CheckField, TextArea, TextField } from '../../../components/Field.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';
import { instantIn, wallClockIn } from '../../../lib/zoneTime.ts';
import { useNewTicket } from '../api/locates.ts';
import { namesIn } from '../model/answers.ts';

const usual = ['power', 'gas', 'water', 'sewer', 'phone', 'cable'] as const;

/** A ticket as the center gave it; the clock follows from the rule of the state. */
export function NewTicket({ job, onDone }: { readonly job: Job; readonly onDone: () => void }) {
  const { t } = useText();
  const [now] = useState(() => wallClockIn(job.timeZone, new Date()));
  const [lacks, setLacks] = useState<'time' | 'utilities' | null>(null);
  const { write, busy, problem } = useNewTicket(onDone);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const field = fieldsOf(event.currentTarget);
    const requestedAt = instantIn(job.timeZone, field('requestedAt').slice(0, 16));
    const utilities = [...usual.filter((name) => field(name) !== '').map((name) => t(`locates.usual.${name}`)), ...namesIn(field('others'))];
    setLacks(requestedAt === null ? 'time' : utilities.length === 0 ? 'utilities' : null);
    if (requestedAt === null || utilities.length === 0) return;
    write({ params: { jobId: job.id }, body: { number: field('number'), requestedAt, area: field('area'), utilities: [...new Set(utilities)] } });
  };
  return (
    <form className="stack ticket-form crew-form" onSubmit={submit} aria-label={t('locates.new')}>
      <TextField label={t('locates.number')} name="number" required maxLength={60} autoComplete="off" />
      <TextField label={t('locates.requestedAt')} hint={t('locates.requestedHint')} name="requestedAt" type="datetime-local" defaultValue={now} required error={lacks === 'time' ? t('ui.needed') : undefined} />
      <TextArea label={t('locates.area')} hint={t('locates.areaHint')} name="area" required maxLength={500} rows={2} />
      <fieldset>
        <legend className="field-legend">{t('locates.utilities')}</legend>
        <div className="ticket-utilities">{usual.map((name) => <CheckField key={name} name={name} label={t(`locates.usual.${name}`)} />)}</div>
        {lacks === 'utilities' ? <p className="field-error">{t('locates.utilitiesNeeded')}</p> : null}
      </fieldset>
      <TextArea label={t('locates.others')} hint={t('locates.othersHint')} name="others" rows={2} optional />
      <ProblemNotice problem={problem} />
      <div className="row">
        <Button type="submit" kind="main" size="crew" busy={busy}>{t('locates.record')}</Button>
        <Button kind="text" onClick={onDone}>{t('ui.cancel')}</Button>
      </div>
    </form>
  );
}
