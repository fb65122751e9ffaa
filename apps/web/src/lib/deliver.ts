import { checklists, daywork, found, jobs, photos, proof, surveyFacts, surveys } from '@yardfall/contracts';
import type { QueryClient } from '@tanstack/react-query';
import { withDelivered } from './answers.ts';
import { keyOf, read } from './query.ts';
import { sendOutbox, type Sender } from './sendOutbox.ts';

const changedBySending = [checklists.read, photos.list, found.list, daywork.list, proof.list, surveys.list, surveys.read, surveyFacts.list, jobs.list, jobs.read];

/** Sends what waits on this phone, and lets the page see what has arrived. */
export async function deliver(queries: QueryClient, person: Pick<Sender, 'id' | 'name'>): Promise<void> {
  const onDelivered: Sender['onDelivered'] = (jobId, facts) => {
    queries.setQueryData(read(surveyFacts.list, { params: { jobId } }).queryKey, (old) => (old === undefined ? old : { ...old, data: withDelivered(old.data, facts) }));
  };
  const onChecklist: Sender['onChecklist'] = (jobId, checklist) => {
    queries.setQueryData(read(checklists.read, { params: { jobId } }).queryKey, (old) => (old === undefined ? old : { ...old, data: checklist }));
  };
  const sent = await sendOutbox({ ...person, onDelivered, onChecklist });
  if (sent) await Promise.all(changedBySending.map((stale) => queries.invalidateQueries({ queryKey: keyOf(stale) })));
}
