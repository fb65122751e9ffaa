import { designs, prices } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useWrite } from '../../../hooks/useWrite.ts';
import { read } from '../../../lib/query.ts';

export function useSheets(jobId: string) {
  return useQuery(read(prices.list, { params: { jobId } }));
}

export function useDesigns(jobId: string) {
  return useQuery(read(designs.list, { params: { jobId } }));
}

export function usePriceItems() {
  return useQuery(read(prices.items));
}

export function useMakeSheet(onDone: () => void) {
  return useWrite(prices.create, { refreshes: [prices.list], onDone });
}

export function useStoreSheet() {
  return useWrite(prices.replace, { refreshes: [prices.list] });
}

export function useSaveItem(onDone: () => void) {
  return useWrite(prices.saveItem, { refreshes: [prices.items], onDone });
}
