import { jobs, offers, permits, prices } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useWrite } from '../../../hooks/useWrite.ts';
import { read } from '../../../lib/query.ts';

export function useOffers(jobId: string) {
  return useQuery(read(offers.list, { params: { jobId } }));
}

export function useSheets(jobId: string) {
  return useQuery(read(prices.list, { params: { jobId } }));
}

export function useMakeOffer(onDone: () => void) {
  return useWrite(offers.create, { refreshes: [offers.list, prices.list, jobs.read, jobs.list], onDone });
}

export function useSendOffer() {
  return useWrite(offers.send, { refreshes: [offers.list, jobs.read, jobs.list] });
}

export function useWithdrawOffer(onDone: () => void) {
  return useWrite(offers.withdraw, { refreshes: [offers.list, jobs.read, jobs.list], onDone });
}

/** Everything that still holds the release; not asked for once it is released. */
export function useReleaseCheck(jobId: string, offerId: string, enabled: boolean) {
  return useQuery({ ...read(jobs.releaseCheck, { params: { jobId }, query: { offerId } }), enabled });
}

export function useRelease() {
  return useWrite(jobs.release, { refreshes: [jobs.read, jobs.list, jobs.releaseCheck, offers.list, permits.read] });
}
