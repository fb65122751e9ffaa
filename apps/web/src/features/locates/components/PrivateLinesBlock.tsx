import { type Job, privateLineKinds, type PrivateLines, privateStates, type PrivateState } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Choices } from '../../../components/Choices.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { TextArea } from '../../../components/Field.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { Notice } from '../../../components/Notice.tsx';
import { PhotoField } from '../../../components/PhotoField.tsx';
import { Photo } from '../../../components/Photo.tsx';
import { Table } from '../../../components/Table.tsx';
import { useKeepAnswers } from '../../../hooks/useKeepAnswers.ts';
import { useOutbox } from '../../../hooks/useOutbox.ts';
import { usePrivateLines } from '../../../hooks/usePrivateLines.ts';
import { keptAnswers, lastAndRefused } from '../../../lib/answersHere.ts';
import { fieldsOf } from '../../../lib/form.ts';
import { useText } from '../../../lib/reader.tsx';
import { wallClockIn } from '../../../lib/zoneTime.ts';

type Line = PrivateLines['lines'][number];

/** Lines that belong to the homeowner, as they declare them; 811 marks none of these. */
export function PrivateLinesBlock({ job, edit }: { readonly job: Job; readonly edit: boolean }) {
  const { t } = useText();
  const lines = usePrivateLines(job.id);
  const [asked, setAsked] = useState<Line | null>(null);
  if (lines === undefined) return null;
  const name = (question: Line['question']) => `checklists.private.${question}` as const;
  return (
    <section className="stack">
      <Heading level={3}>{t('locates.private')}</Heading>
      <p className="measure">{t('locates.privateWhy')}</p>
      <Table stacks caption={t('locates.private')} captionUnseen
        columns={[{ key: 'line', head: t('locates.privateLine') }, { key: 'is', head: t('locates.privateIs') }, ...(edit ? [{ key: 'act', head: <span className="unseen">{t('locates.privateAnswer')}</span> }] : [])]}
        rows={lines.map((line) => ({
          key: line.question,
          cells: {
            line: t(name(line.question)),
            is: <><Declared job={job} line={line} /><DeclaredHere job={job} question={line.question} /></>,
            act: <div className="ticket-act"><Button size="crew" kind={line.state === 'unknown' ? 'plain' : 'text'} aria-label={t('locates.privateAnswerOf', { line: name(line.question) })} onClick={() => setAsked(line)}>{t('locates.privateAnswer')}</Button></div>,
          },
        }))} />
      <Dialog open={asked !== null} title={asked === null ? '' : t(name(asked.question))} onClose={() => setAsked(null)}>
        {asked === null ? null : <Declare job={job} line={asked} onDone={() => setAsked(null)} />}
      </Dialog>
    </section>
  );
}

function Declared({ job, line }: { readonly job: Job; readonly line: Line }) {
  const { t } = useText();
  return (
    <span>
      {t(`locates.privateState.${line.state}`)}
      {line.note === '' ? null : <span className="ticket-note">{line.note}</span>}
      {line.at === null || line.by === '' ? null : <span className="faint ticket-note">{t('locates.saidBy', { at: line.at, by: line.by }, { timeZone: job.timeZone })}</span>}
      {line.photoId === null ? null : <Photo jobId={job.id} photoId={line.photoId} alt={t(`checklists.private.${line.question}`)} />}
    </span>
  );
}

/** What is on this phone and not in the office yet; whether it counts here already. */
function DeclaredHere({ job, question }: { readonly job: Job; readonly question: Line['question'] }) {
  const { t } = useText();
  const kept = keptAnswers(useOutbox(), job.id, 'privateLine').filter(({ answer }) => answer.said.question === question);
  return lastAndRefused(kept).map(({ id, refused, answer: { said } }) => (
    <Notice key={id} severity={refused === null ? 'caution' : 'stop'}>
      <p><strong>{t(`locates.privateState.${said.state}`)}</strong></p>
      {said.note === '' ? null : <p>{said.note}</p>}
      <p>{t(refused !== null ? 'locates.here.refused' : 'locates.privateHere')}</p>
      {said.photoId === null ? null : <Photo jobId={job.id} photoId={said.photoId} alt={t(`checklists.private.${question}`)} />}
    </Notice>
  ));
}

function Declare({ job, line, onDone }: { readonly job: Job; readonly line: Line; readonly onDone: () => void }) {
  const { t } = useText();
  const [state, setState] = useState<PrivateState | null>(null);
  const { keep, busy, problem } = useKeepAnswers(job.id, onDone);
  const isLine = (privateLineKinds as readonly string[]).includes(line.question);
  const submit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const field = fieldsOf(event.currentTarget);
    if (state === null) return;
    const on = wallClockIn(job.timeZone, new Date()).slice(0, 10);
    keep([{ what: 'privateLine', said: { question: line.question, state, note: field('note'), on, photoId: field('photoId') || null } }]);
  };
  return (
    <form className="stack crew-form" onSubmit={submit}>
      <Choices look="crew" label={t('locates.privateIs')} value={state} onChange={setState} choices={privateStates.map((value) => ({ value, label: t(`locates.privateState.${value}`) }))} />
      <TextArea label={t(isLine ? 'locates.privateWhere' : 'locates.privateWho')} name="note" rows={2} maxLength={500} optional defaultValue={line.note} />
      <PhotoField jobId={job.id} timeZone={job.timeZone} label={t('locates.photo')} note={t(`checklists.private.${line.question}`)} />
      <KeepProblem problem={problem} />
      <Button type="submit" kind="main" size="crew" wide disabled={state === null || busy} busy={busy}>{t('locates.recordAnswer')}</Button>
    </form>
  );
}
