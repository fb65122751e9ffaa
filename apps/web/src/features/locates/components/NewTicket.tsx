import type { Job } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { CheckField, TextArea, TextField } from '../../../components/Field.tsx';
import { LengthField } from '../../../components/LengthField.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';
import { instantIn } from '../../../lib/zoneTime.ts';
import { useNewTicket, usePrepareTicket } from '../api/locates.ts';
import { namesIn, sortUtilities, usualOnForm } from '../model/answers.ts';
import { givenIn } from '../model/given.ts';
import { GivenByCenter } from './GivenByCenter.tsx';

interface NewTicketProps {
  readonly job: Job;
  /** As it will be told to the center, before there is a number; otherwise as the center gave it. */
  readonly asDraft: boolean;
  /** The ticket that it renews or widens. */
  readonly like?: { readonly area: string; readonly method: string; readonly depth: number | null; readonly utilities: readonly string[] };
  readonly onDone: () => void;
}

/** A ticket with its white-lined area; the clock follows from the rule of the state once the center took it. */
export function NewTicket({ job, asDraft, like, onDone }: NewTicketProps) {
  const { t } = useText();
  const [lacks, setLacks] = useState<'time' | 'span' | 'utilities' | null>(null);
  const [depth, setDepth] = useState<number | null>(like?.depth ?? null);
  const made = useNewTicket(onDone);
  const prepared = usePrepareTicket(onDone);
  const { busy, problem } = asDraft ? prepared : made;
  const begin = sortUtilities(like?.utilities ?? [], (name) => t(`locates.usual.${name}`));
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const field = fieldsOf(event.currentTarget);
    const requestedAt = instantIn(job.timeZone, field('requestedAt').slice(0, 16));
    const utilities = [...usualOnForm.filter((name) => field(name) !== '').map((name) => t(`locates.usual.${name}`)), ...namesIn(field('others'))];
    const given = asDraft ? null : givenIn(job.timeZone, field);
    setLacks(!asDraft && requestedAt === null ? 'time' : !asDraft && given === null ? 'span' : utilities.length === 0 ? 'utilities' : null);
    if (utilities.length === 0) return;
    const told = { area: field('area'), method: field('method'), depth, utilities: [...new Set(utilities)] };
    const params = { jobId: job.id };
    if (asDraft) prepared.write({ params, body: told });
    else if (requestedAt !== null && given !== null) made.write({ params, body: { number: field('number'), requestedAt, given, ...told } });
  };
  return (
    <form className="stack ticket-form crew-form" onSubmit={submit} aria-label={t(asDraft ? 'locates.prepare' : 'locates.new')}>
      {asDraft ? <p>{t('locates.prepareWhy')}</p> : <GivenByCenter job={job} noTime={lacks === 'time'} noSpan={lacks === 'span'} />}
      <TextArea label={t('locates.area')} hint={t('locates.areaHint')} name="area" required maxLength={500} rows={2} defaultValue={like?.area} />
      <TextField label={t('locates.method')} hint={t('locates.methodHint')} name="method" maxLength={200} optional autoComplete="off" defaultValue={like?.method} />
      <LengthField label={t('locates.depth')} value={depth} onChange={setDepth} optional />
      <fieldset>
        <legend className="field-legend">{t('locates.utilities')}</legend>
        <div className="ticket-utilities">{usualOnForm.map((name) => <CheckField key={name} name={name} label={t(`locates.usual.${name}`)} defaultChecked={begin.usual.includes(name)} />)}</div>
        {lacks === 'utilities' ? <p className="field-error">{t('locates.utilitiesNeeded')}</p> : null}
      </fieldset>
      <TextArea label={t('locates.others')} hint={t('locates.othersHint')} name="others" rows={2} optional defaultValue={begin.others.join('\n')} />
      <ProblemNotice problem={problem} />
      <div className="row">
        <Button type="submit" kind="main" size="crew" busy={busy}>{t(asDraft ? 'locates.prepareDo' : 'locates.record')}</Button>
        <Button kind="text" onClick={onDone}>{t('ui.cancel')}</Button>
      </div>
    </form>
  );
}
