import type { LocateTicket, TicketEventKind } from '@yardfall/contracts';
import { isStop } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Cautions } from '../../../components/Cautions.tsx';
import { Choices } from '../../../components/Choices.tsx';
import { CheckField, TextArea, TextField } from '../../../components/Field.tsx';
import { GasRule } from '../../../components/GasRule.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { PhotoField } from '../../../components/PhotoField.tsx';
import { Select } from '../../../components/Select.tsx';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';
import { instantIn, wallClockIn } from '../../../lib/zoneTime.ts';
import { useTicketAct } from '../api/locates.ts';
import { latestAnswers } from '../../../lib/tickets.ts';
import { mayHappen } from '../model/events.ts';

interface EventFormProps {
  readonly ticket: LocateTicket;
  readonly timeZone: string;
  readonly named: (utility: string) => string;
  readonly onDone: () => void;
}

/** What happened to the marks or the ticket. What stops the digging says so before it is put on record. */
export function EventForm({ ticket, timeZone, named, onDone }: EventFormProps) {
  const { t } = useText();
  const [kind, setKind] = useState<TicketEventKind | null>(null);
  const [opened] = useState(() => new Date());
  const now = wallClockIn(timeZone, opened);
  const { keep, busy, problem } = useTicketAct(ticket.jobId, ticket.id, onDone);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const field = fieldsOf(event.currentTarget);
    // A field of minutes would put it before what happened in the same minute.
    const told = field('at').slice(0, 16);
    const at = told === now ? opened.toISOString() : (instantIn(timeZone, told) ?? new Date().toISOString());
    if (kind === null) return;
    keep({ what: 'event', body: { kind, utility: field('utility'), hazard: field('hazard') !== '', note: field('note'), photoId: field('photoId') || null, at } });
  };
  return (
    <form className="stack crew-form" onSubmit={submit}>
      <Choices look="crew" label={t('locates.happenedWhat')} value={kind} onChange={setKind} choices={mayHappen(ticket).map((value) => ({ value, label: t(`locates.event.${value}`) }))} />
      {kind === 'damage' ? <><Notice severity="stop"><p>{t('locates.damageDo')}</p></Notice><Cautions which={['gasStrike']} /><GasRule /><CheckField name="hazard" label={t('locates.hazard')} /></> : null}
      {kind !== null && kind !== 'damage' && isStop(kind) ? <Notice severity="caution"><p>{t('locates.stopsNow')}</p></Notice> : null}
      {kind !== null && isStop(kind) ? <TextField label={t('locates.happenedAt')} name="at" type="datetime-local" defaultValue={now} max={now} required /> : null}
      <Select label={t('locates.happenedTo')} name="utility" choices={[{ value: '', label: t('locates.happenedAll') }, ...latestAnswers(ticket).map(({ utility }) => ({ value: utility, label: named(utility) }))]} />
      <TextArea label={t('locates.happenedNote')} name="note" maxLength={500} rows={2} optional />
      <PhotoField jobId={ticket.jobId} timeZone={timeZone} label={t('locates.photo')} note={kind === null ? '' : t(`locates.event.${kind}`)} />
      <KeepProblem problem={problem} />
      <Button type="submit" kind={kind !== null && isStop(kind) ? 'danger' : 'main'} size="crew" wide disabled={kind === null || busy} busy={busy}>{t('locates.happenedDo')}</Button>
    </form>
  );
}
