import { lengthOf, type Job } from '@yardfall/contracts';
import { useState, type FormEvent } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Dialog } from '../../../components/Dialog.tsx';
import { TextField } from '../../../components/Field.tsx';
import { Heading } from '../../../components/Heading.tsx';
import { KeepProblem } from '../../../components/KeepProblem.tsx';
import { Notice, ProblemNotice } from '../../../components/Notice.tsx';
import { Table } from '../../../components/Table.tsx';
import { useMe } from '../../../hooks/useMe.ts';
import { useKeepDaywork } from '../../../hooks/useRecord.ts';
import { useText } from '../../../lib/reader.tsx';
import { useDaywork, type DayworkNow } from '../api/useDaywork.ts';
import { taskName } from '../model/taskName.ts';
import './daywork.css';

/** Hours by task and person, and materials, as they were noted. */
export function DayworkSection({ job }: { readonly job: Job }) {
  const { t } = useText();
  const noted = useDaywork(job.id);
  const [striking, setStriking] = useState<string | null>(null);
  const { spans, goods } = noted.all;
  if (noted.pending) return null;
  return (
    <section className="stack" aria-labelledby="daywork">
      <Heading level={3} id="daywork">{t('daywork.title')}</Heading>
      <ProblemNotice problem={noted.problem} />
      {spans.length + goods.length === 0 ? <p className="faint">{t('daywork.none')}</p> : null}
      {spans.some(({ doubtful }) => doubtful) ? <Notice severity="caution"><p>{t('daywork.doubtful')}</p></Notice> : null}
      {spans.length === 0 ? null : <Hours noted={noted} timeZone={job.timeZone} onStrike={setStriking} />}
      {goods.length === 0 ? null : <Materials noted={noted} timeZone={job.timeZone} onStrike={setStriking} />}
      <Dialog open={striking !== null} title={t('daywork.strikeWhy')} onClose={() => setStriking(null)}>
        {striking === null ? null : <Strike jobId={job.id} entry={striking} onDone={() => setStriking(null)} />}
      </Dialog>
    </section>
  );
}

interface PartProps {
  readonly noted: DayworkNow;
  readonly timeZone: string;
  readonly onStrike: (id: string) => void;
}

function Hours({ noted: { all, now }, timeZone, onStrike }: PartProps) {
  const text = useText();
  const { t, q } = text;
  const { me } = useMe();
  const time = (at: string) => q('dateTime', at, { timeZone });
  const rows = all.spans.map((span) => ({
    key: span.id,
    cells: {
      task: taskName(span.task, text), who: span.by, from: time(span.from), until: span.until === null ? t('daywork.running') : time(span.until), time: q('duration', lengthOf(span, now)),
      strike: span.memberId === me?.id ? <Button kind="text" size="crew" onClick={() => onStrike(span.id)}>{t('daywork.strike')}</Button> : null,
    },
  }));
  const totals = all.totals.map(({ task, seconds }) => ({ key: `total ${task}`, strong: true, cells: { task: taskName(task, text), who: t('daywork.total'), from: '', until: '', time: q('duration', seconds), strike: null } }));
  return (
    <Table stacks="labelled" caption={t('daywork.hours')} rows={[...rows, ...totals]} columns={[
      { key: 'task', head: t('daywork.task') }, { key: 'who', head: t('daywork.who') }, { key: 'from', head: t('daywork.from') }, { key: 'until', head: t('daywork.until') }, { key: 'time', head: t('daywork.time'), figure: true }, { key: 'strike', head: '' },
    ]} />
  );
}

function Materials({ noted: { all }, timeZone, onStrike }: PartProps) {
  const { t, q } = useText();
  const rows = all.goods.map(({ goods, by }) => ({
    key: goods.id,
    cells: { what: goods.note === '' ? goods.what : `${goods.what}: ${goods.note}`, kind: t(`daywork.kind.${goods.kind}`), amount: t('daywork.amount', { amount: goods.amount, unit: goods.unit }), who: by, at: q('dateTime', goods.at, { timeZone }), strike: <Button kind="text" size="crew" onClick={() => onStrike(goods.id)}>{t('daywork.strike')}</Button> },
  }));
  return (
    <Table stacks="labelled" caption={t('daywork.materials')} rows={rows} columns={[
      { key: 'what', head: t('daywork.field.what') }, { key: 'kind', head: t('daywork.field.kind') }, { key: 'amount', head: t('daywork.field.amount'), figure: true }, { key: 'who', head: t('daywork.who') }, { key: 'at', head: t('daywork.from') }, { key: 'strike', head: '' },
    ]} />
  );
}

function Strike({ jobId, entry, onDone }: { readonly jobId: string; readonly entry: string; readonly onDone: () => void }) {
  const { t } = useText();
  const keep = useKeepDaywork(jobId);
  const [reason, setReason] = useState('');
  const submit = (event: FormEvent) => {
    event.preventDefault();
    keep.mutate({ kind: 'struck', entry, reason }, { onSuccess: onDone });
  };
  return (
    <form className="stack crew-form" onSubmit={submit}>
      <TextField label={t('daywork.strikeWhy')} hint={t('daywork.strikeHint')} required minLength={3} maxLength={300} value={reason} onChange={(event) => setReason(event.target.value)} />
      <KeepProblem problem={keep.error} />
      <Button type="submit" kind="main" size="crew" wide disabled={keep.isPending}>{t('daywork.strike')}</Button>
    </form>
  );
}
