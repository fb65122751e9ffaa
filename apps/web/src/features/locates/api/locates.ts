import { checklists, jobs, locates, photos } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useWrite } from '../../../hooks/useWrite.ts';
import { read } from '../../../lib/query.ts';

export function useTickets(jobId: string) {
  return useQuery(read(locates.list, { params: { jobId } }));
}

/** A ticket moves the hold for the marks and hold point HP-1. */
const refreshes = [locates.list, jobs.read, jobs.list, checklists.read];

export function usePhotosOfJob(jobId: string) {
  return useQuery(read(photos.list, { params: { jobId } }));
}

export function usePrepareTicket(onDone: () => void) {
  return useWrite(locates.prepare, { refreshes, onDone });
}

export function useSubmitTicket(onDone: () => void) {
  return useWrite(locates.submit, { refreshes, onDone });
}

export function useTicketEvent(onDone: () => void) {
  return useWrite(locates.event, { refreshes, onDone });
}

export function useNewTicket(onDone: () => void) {
  return useWrite(locates.create, { refreshes, onDone });
}

export function useAnswer(onDone: () => void) {
  return useWrite(locates.answer, { refreshes, onDone });
}

export function useCloseTicket() {
  return useWrite(locates.close, { refreshes });
}
