import { foot, inch, within } from './measures.ts';
import { item } from './types.ts';
import type { Subject } from './types.ts';
import { firstOf } from './wordings.ts';

const eighth = inch / 8;

/** A test hole every 8 to 10 ft along the cut, two at least. */
function holes({ cut }: Pick<Subject, 'cut'>): number {
  return cut === null ? 2 : Math.max(2, Math.ceil(cut.length / (10 * foot) - 1e-9));
}

/** B. Arrive, protect, control levels. Figures are common practice or ours. */
export const groupB = [
  item({ id: 'B1', applies: ['always'], photos: 12, params: { photos: 12 } }),
  item({
    id: 'B2', applies: ['always'], holdPoint: 'HP-2', evidence: ['tick', 'photo', 'value'], photos: 1, params: { shots: 3, tolerance: eighth },
    measures: () => ['check1', 'check2', 'check3'].map((name) => within(name, 'height', 0, eighth)),
  }),
  item({ id: 'B3', applies: ['digging'], evidence: ['tick', 'photo', 'signature'], photos: 1, signers: ['crewLead', 'homeowner'] }),
  item({
    id: 'B5', applies: ['concrete'], per: 'slabCut', holdPoint: 'HP-3', evidence: ['tick', 'photo', 'value'], photos: 1,
    params: { holes: 2, near: 8 * foot, far: 10 * foot }, pictures: holes, figures: (subject) => ({ holes: holes(subject) }), texts: () => ['steel'],
    measures: ({ cut, ...subject }) =>
      cut === null ? [] : Array.from({ length: holes({ cut, ...subject }) }, (_, n) => ({ name: `thickness:${String(n + 1)}`, quantity: 'height' as const, target: cut.thickness, min: null, max: cut.thickness })),
  }),
  item({ id: 'B6', applies: ['slabAtHouse'], holdPoint: 'HP-3', photos: 1, signers: ['owner'] }),
  item({ id: 'B7', applies: ['always'], photos: 1, wording: firstOf({ Concrete: ['concrete'] }) }),
  item({
    id: 'B8', applies: ['electricsOrPool'], photos: 1, params: { zone: 3 * foot },
    asks: ({ document }) => (document.construction.poolWithin3m ? { evidence: ['tick', 'photo', 'signature'], signers: ['crewLead', 'electrician'] } : {}),
  }),
];
