import type { CandidateOutlet, DesignDocument } from '@yardfall/calc';
import type { Layout } from './layout.ts';
import type { SectionOptions } from './options.ts';

export const showsCandidates = (options: SectionOptions): boolean =>
  options.gravity && options.window === 'whole' && options.detail === 'full';

/** Where a candidate outlet was shot along the section; without a shot at its level, its pipe length from the collector. */
export function candidateStation(document: DesignDocument, layout: Layout, outlet: CandidateOutlet): number {
  const from = layout.lowSpot?.station ?? 0;
  const shots = document.site.spotLevels.filter(({ station, level }) => station !== null && station > from && Math.abs(level - outlet.level) < 0.001);
  return shots.at(-1)?.station ?? from + outlet.distance;
}
