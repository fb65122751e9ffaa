import { audit, gasRules, jobs, locateRuleSets, locates } from '@yardfall/contracts';
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

export function useGasRules() {
  return useQuery(read(gasRules.list, {}));
}

export function useEnterGasRule(onDone: () => void) {
  return useWrite(gasRules.enter, { refreshes: [gasRules.list, audit.list], onDone });
}
