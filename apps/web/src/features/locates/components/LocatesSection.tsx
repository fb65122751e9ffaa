import type { Job } from '@yardfall/contracts';
import { useEffect, useState } from 'react';
import { Button } from '../../../components/Button.tsx';
import { Cautions } from '../../../components/Cautions.tsx';
import { Empty } from '../../../components/Empty.tsx';
import { Loading } from '../../../components/Loading.tsx';
import { ProblemNotice } from '../../../components/Notice.tsx';
import { useBuildRevision } from '../../../hooks/useBuildRevision.ts';
import { useMe } from '../../../hooks/useMe.ts';
import { useMinute } from '../../../hooks/useMinute.ts';
import { useOutbox } from '../../../hooks/useOutbox.ts';
import { useStops } from '../../../hooks/useStops.ts';
import { useText } from '../../../lib/reader.tsx';
import { useTickets } from '../api/locates.ts';
import { actsOf, saidHere, ticketHere } from '../model/here.ts';
import { isLooser, jobVerdictHere, withHits } from '../model/verdictHere.ts';
import { NewTicket } from './NewTicket.tsx';
import { PrivateLinesBlock } from './PrivateLinesBlock.tsx';
import { Ticket } from './Ticket.tsx';
import { VerdictBlock } from './VerdictBlock.tsx';
import './locates.css';

/** May the job dig now, or every reason why not; below it each ticket with its clock and answers. */
export function LocatesSection({ job }: { readonly job: Job }) {
  const { t } = useText();
  const { may } = useMe();
  const { data, dataUpdatedAt, error, isPending, refetch } = useTickets(job.id);
  const { document } = useBuildRevision(job);
  const [adding, setAdding] = useState<'draft' | 'taken' | null>(null);
  const hits = useStops(job.id).flatMap(({ hitAt }) => hitAt ?? []);
  // What has just happened is not ahead of the last look at the clock.
  const now = Math.max(useMinute(dataUpdatedAt), ...hits.map((at) => Date.parse(at)));
  const acts = actsOf(useOutbox(), job.id);
  const passed = data !== undefined && isLooser(data.data.items, data.data.verdict, now);
  // A clock has passed since the office was asked: it is asked again, every minute.
  useEffect(() => { if (passed) void refetch(); }, [passed, now, refetch]);
  if (isPending) return <Loading what={t('locates.loading')} />;
  if (!data) return <ProblemNotice problem={error} action={<Button onClick={() => void refetch()}>{t('ui.tryAgain')}</Button>} />;
  const { verdict } = data.data;
  const items = withHits(data.data.items, hits);
  const judged = jobVerdictHere(items.map((ticket) => ticketHere(ticket, acts, now)), verdict, now);
  const add = may('locates.edit') ? (
    <>
      <Button size="crew" kind={items.length === 0 ? 'main' : 'plain'} onClick={() => setAdding('taken')}>{t('locates.new')}</Button>
      <Button size="crew" onClick={() => setAdding('draft')}>{t('locates.prepare')}</Button>
    </>
  ) : undefined;
  return (
    <div className="stack">
      {items.length === 0 && adding === null ? <Empty what={t('locates.none')} why={t('locates.noneWhy')} step={add} /> : <VerdictBlock verdict={saidHere(judged, items, acts)} timeZone={job.timeZone} />}
      {items.map((ticket) => <Ticket key={ticket.id} ticket={ticket} acts={acts.filter(({ ticketId }) => ticketId === ticket.id)} now={now} job={job} edit={may('locates.edit')} alone={items.length === 1} drawn={document?.site.utilities ?? []} />)}
      {adding !== null ? <NewTicket job={job} asDraft={adding === 'draft'} onDone={() => setAdding(null)} /> : items.length > 0 && add ? <div className="row">{add}</div> : null}
      <PrivateLinesBlock job={job} edit={may('locates.edit')} />
      <Cautions which={['gasStrike', 'handDig', 'privateLines', 'firstOneCall']} />
    </div>
  );
}
