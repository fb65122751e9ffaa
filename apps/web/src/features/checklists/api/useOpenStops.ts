import { useMemo } from 'react';
import { useStops } from '../../../hooks/useStops.ts';
import type { FoundStop } from '../model/view.ts';

/** What the crew found and nobody has answered yet, in the office and on this phone. */
export function useOpenStops(jobId: string, released: boolean): readonly FoundStop[] {
  const stops = useStops(jobId, released);
  return useMemo(() => stops.map(({ kind, part, hitAt }) => ({ kind, part, hitAt })), [stops]);
}
