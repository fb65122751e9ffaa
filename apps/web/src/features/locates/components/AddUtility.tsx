import type { LocateTicket } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Choices } from '../../../components/Choices.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { TextField } from '../../../components/Field.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';
import { latestAnswers } from '../../../lib/tickets.ts';
import { useTicketAct } from '../api/locates.ts';
import { onTicket, usualOnForm } from '../model/answers.ts';

interface AddUtilityProps {
  /** With what this phone knows of it. */
  readonly ticket: LocateTicket;
}

/** A utility that the center did not name at first: it is silent until it answers, and silence is never clearance. */
export function AddUtility({ ticket }: AddUtilityProps) {
  const { t } = useText();
  const [open, setOpen] = useState(false);
  return (
    <>
      <div><Button kind="text" size="crew" onClick={() => setOpen(true)}>{t('locates.addUtility')}</Button></div>
      <Dialog open={open} title={t('locates.addUtilityTitle', { number: ticket.number })} onClose={() => setOpen(false)}><Form ticket={ticket} onDone={() => setOpen(false)} /></Dialog>
    </>
  );
}

const other = 'other';
type Chosen = (typeof usualOnForm)[number] | typeof other;

function Form({ ticket, onDone }: AddUtilityProps & { readonly onDone: () => void }) {
  const { t } = useText();
  const there = latestAnswers(ticket).map(({ utility }) => utility);
  const usual = usualOnForm.filter((name) => onTicket(there, t(`locates.usual.${name}`)) === null);
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const [known, setKnown] = useState<string | null>(null);
  const { keep, busy, problem } = useTicketAct(ticket.jobId, ticket.id, onDone);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const field = fieldsOf(event.currentTarget);
    if (chosen === null) return;
    const utility = chosen === other ? field('name').trim() : t(`locates.usual.${chosen}`);
    const same = onTicket(there, utility);
    setKnown(same);
    if (same === null && utility !== '') keep({ what: 'answer', body: { utility, answer: 'none', code: '', note: field('how'), photoId: null } });
  };
  return (
    <form className="stack crew-form" onSubmit={submit}>
      <p>{t('locates.addUtilityWhy')}</p>
      <Choices<Chosen> look="crew" label={t('locates.utility')} value={chosen} onChange={setChosen} choices={[...usual.map((value) => ({ value, label: t(`locates.usual.${value}`) })), { value: other, label: t('locates.addUtilityOther') }]} />
      {chosen === other ? <TextField label={t('locates.addUtilityName')} hint={t('locates.addUtilityNameHint')} name="name" required maxLength={80} autoComplete="off" error={known === null ? undefined : t('locates.addUtilityThere', { utility: known })} /> : null}
      <TextField label={t('locates.addUtilityHow')} hint={t('locates.addUtilityHowHint')} name="how" maxLength={500} optional autoComplete="off" />
      <KeepProblem problem={problem} />
      <Button type="submit" kind="main" size="crew" wide disabled={chosen === null || busy} busy={busy}>{t('locates.addUtilityDo')}</Button>
    </form>
  );
}
