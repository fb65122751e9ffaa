import { library } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { read } from '../../../lib/query.ts';

/** Pumps and parts of the company, for the designs that take them. */
export function useLibraryEntries() {
  return useQuery(read(library.list)).data?.data.items ?? [];
}
