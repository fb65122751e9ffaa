import { library } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useWrite } from '../../../hooks/useWrite.ts';
import { read } from '../../../lib/query.ts';

export function useLibrary() {
  return useQuery(read(library.list));
}

export function useAddEntry(onDone: () => void) {
  return useWrite(library.add, { refreshes: [library.list], onDone });
}

export function useChangeEntry(onDone: () => void) {
  return useWrite(library.change, { refreshes: [library.list], onDone });
}

export function useImportEntries() {
  return useWrite(library.import, { refreshes: [library.list] });
}
