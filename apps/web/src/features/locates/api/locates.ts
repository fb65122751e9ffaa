import { audit, checklists, jobs, locates } from '@yardfall/contracts';
import { useMutation, useQuery } from '@tanstack/react-query';
import { v7 as uuidv7 } from 'uuid';
import { useMe } from '../../../hooks/useMe.ts';
import { useWrite } from '../../../hooks/useWrite.ts';
import { keepLocate, type TicketAct } from '../../../lib/outbox.ts';
import { read } from '../../../lib/query.ts';

export function useTickets(jobId: string) {
  return useQuery(read(locates.list, { params: { jobId } }));
}

/** A ticket moves the hold for the marks and hold point HP-1. */
const refreshes = [locates.list, jobs.read, jobs.list, checklists.read];

export function usePrepareTicket(onDone: () => void) {
  return useWrite(locates.prepare, { refreshes, onDone });
}

export function useSubmitTicket(onDone: () => void) {
  return useWrite(locates.submit, { refreshes, onDone });
}

/** Kept on this phone first, so that a line that was hit stops the digging there whatever the signal does, and sent from there once. */
export function useTicketAct(jobId: string, ticketId: string, onDone?: () => void) {
  const memberId = useMe().me?.id ?? '';
  const mutation = useMutation<void, Error, TicketAct>({ networkMode: 'always', mutationFn: (act) => keepLocate({ id: uuidv7(), memberId, jobId, ticketId, act }), onSuccess: () => onDone?.() });
  return { keep: mutation.mutate, busy: mutation.isPending, problem: mutation.error };
}

export function useNewTicket(onDone: () => void) {
  return useWrite(locates.create, { refreshes, onDone });
}

export function useCloseTicket() {
  return useWrite(locates.close, { refreshes });
}

export function useGiveTimes(onDone: () => void) {
  return useWrite(locates.give, { refreshes: [...refreshes, audit.list], onDone });
}
