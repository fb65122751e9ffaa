import { audit, checklists, daywork, found, jobs, locates, permits, photos, privateLines, proof, surveyFacts, surveys } from '@yardfall/contracts';
import type { QueryClient } from '@tanstack/react-query';
import { withDelivered, withPhoto, withReport } from './answers.ts';
import { withDigging, withTicket } from './keptTickets.ts';
import { keyOf, read } from './query.ts';
import { sendOutbox, type Sender } from './sendOutbox.ts';

const changedBySending = [checklists.read, photos.list, found.list, locates.list, daywork.list, proof.list, surveys.list, surveys.read, surveyFacts.list, jobs.list, jobs.read, jobs.releaseCheck, privateLines.read, permits.read, audit.list];

/** Sends what waits on this phone, and lets the page see what has arrived. */
export async function deliver(queries: QueryClient, person: Pick<Sender, 'id' | 'name'>): Promise<void> {
  const onDelivered: Sender['onDelivered'] = (jobId, facts) => {
    queries.setQueryData(read(surveyFacts.list, { params: { jobId } }).queryKey, (old) => (old === undefined ? old : { ...old, data: withDelivered(old.data, facts) }));
  };
  const onChecklist: Sender['onChecklist'] = (jobId, checklist) => {
    queries.setQueryData(read(checklists.read, { params: { jobId } }).queryKey, (old) => (old === undefined ? old : { ...old, data: checklist }));
  };
  const onFound: Sender['onFound'] = (report) => {
    queries.setQueryData(read(found.list, { params: { jobId: report.jobId } }).queryKey, (old) => (old === undefined ? old : { ...old, data: withReport(old.data, report) }));
  };
  const onPhoto: Sender['onPhoto'] = (photo) => {
    queries.setQueryData(read(photos.list, { params: { jobId: photo.jobId } }).queryKey, (old) => (old === undefined ? old : { ...old, data: withPhoto(old.data, photo) }));
  };
  const onTicket: Sender['onTicket'] = (jobId, ticket) => {
    const params = { jobId };
    const list = queries.setQueryData(read(locates.list, { params }).queryKey, (old) => (old === undefined ? old : { ...old, data: withTicket(old.data, ticket, Date.now()) }));
    if (list !== undefined) queries.setQueryData(read(checklists.read, { params }).queryKey, (old) => (old === undefined ? old : { ...old, data: withDigging(old.data, list.data) }));
  };
  const onPermits: Sender['onPermits'] = (jobId, data) => {
    queries.setQueryData(read(permits.read, { params: { jobId } }).queryKey, (old) => (old === undefined ? old : { ...old, data }));
  };
  const onPrivateLines: Sender['onPrivateLines'] = (jobId, data) => {
    queries.setQueryData(read(privateLines.read, { params: { jobId } }).queryKey, (old) => (old === undefined ? old : { ...old, data }));
  };
  const sent = await sendOutbox({ ...person, onDelivered, onChecklist, onFound, onPhoto, onTicket, onPermits, onPrivateLines });
  if (sent) await Promise.all(changedBySending.map((stale) => queries.invalidateQueries({ queryKey: keyOf(stale) })));
}
