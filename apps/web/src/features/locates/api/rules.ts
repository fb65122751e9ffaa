import { audit, jobs, locateRuleSets, locates } from '@yardfall/contracts';
import { useQuery } from '@tanstack/react-query';
import { useWrite } from '../../../hooks/useWrite.ts';
import { read } from '../../../lib/query.ts';

export function useRuleSets() {
  return useQuery(read(locateRuleSets.list, {}));
}

/** A signed rule may start the clock of open tickets. */
export function useSignRule(onDone: () => void) {
  return useWrite(locateRuleSets.sign, { refreshes: [locateRuleSets.list, locates.list, jobs.read, jobs.list, audit.list], onDone });
}
