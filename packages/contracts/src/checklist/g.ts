import type { Outlet } from '@yardfall/calc';
import { cureOfLine, gluing } from './gluing.ts';
import { atLeast, foot, hour, inch, minute, of, within } from './measures.ts';
import { isEmitter, isPublic } from './traits.ts';
import { item } from './types.ts';
import type { Measure } from './types.ts';

const cover = 12 * inch;
const outlets = { kinds: ['outlet'] } as const;
/** Setbacks of an emitter: 10 ft from foundations, 5 ft from the lot line. Municipal codes differ from 2 to 10 ft; entered as common practice. */
const fromFoundation = 10 * foot;
const fromLotLine = 5 * foot;

/** G. Discharge and outlet. Figures are common practice or ours. */
export const groupG = [
  item({
    id: 'G1', applies: ['pump'], per: { kinds: ['dischargeLine'] }, holdPoint: 'HP-cure', evidence: ['tick', 'photo', 'value'], photos: 2, params: { cover },
    measures: () => [atLeast('cover', 'height', cover), ...gluing()], cure: cureOfLine,
  }),
  item({ id: 'G3', applies: ['pump'], per: { kinds: ['dischargeLine'] }, holdPoint: 'HP-10', evidence: ['tick', 'photo', 'value'], photos: 1, params: { run: 5 * minute }, measures: () => [atLeast('ran', 'minutes', 5 * minute)] }),
  item({
    id: 'G4', applies: ['percolationPit'], per: outlets, concerns: ({ part }) => part?.kind === 'outlet' && part.pit !== null, evidence: ['tick', 'photo', 'value'], photos: 1, params: { drains: 24 * hour },
    measures: of('outlet', pit),
  }),
  item({
    id: 'G5', applies: ['emitter'], per: outlets, concerns: ({ part }) => part?.kind === 'outlet' && isEmitter(part.outletKind), evidence: ['tick', 'photo', 'value'], photos: 1, params: { foundation: fromFoundation, lotLine: fromLotLine },
    measures: of('outlet', (outlet) => [
      atLeast('toFoundation', 'length', fromFoundation, Math.max(outlet.distanceToFoundation, fromFoundation)),
      atLeast('toLotLine', 'length', fromLotLine, Math.max(outlet.distanceToLotLine, fromLotLine)),
      within('lidLevel', 'level', outlet.level, inch / 2),
    ]),
  }),
  item({
    id: 'G6', applies: ['curbOrDitchPermit'], per: outlets, concerns: ({ part }) => part?.kind === 'outlet' && isPublic(part.outletKind),
    holdPoint: 'HP-11', evidence: ['tick', 'photo', 'signature'], photos: 1, signers: ['inspector'],
  }),
  item({ id: 'G7', applies: ['pumpOrOutletLine'], photos: 1, params: { lift: 6 * inch } }),
];

function pit(outlet: Outlet): readonly Measure[] {
  return outlet.pit === null ? [] : [atLeast('pitVolume', 'volume', outlet.pit.area * outlet.pit.depth)];
}
