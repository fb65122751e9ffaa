import { openings, recess } from './groupD.ts';
import { atLeast, atMost, between, hour, inch } from './measures.ts';
import { item } from './types.ts';
import type { Subject } from './types.ts';
import { firstOf } from './wordings.ts';

const channels = { kinds: ['channel'] } as const;

/** I. Concrete and restoration. Joint spacing: a concrete industry practice sheet (CIP-6). The rest is common practice or ours. */
export const groupI = [
  item({
    id: 'I1', applies: ['concrete'], per: 'pour', holdPoint: 'HP-13', evidence: ['tick', 'photo', 'value'], photos: 1,
    measures: (subject) => [between('dowels', 'height', 18 * inch, 24 * inch), between('embed', 'height', 4 * inch, 6 * inch), atLeast('jointDepth', 'height', slabAt(subject) / 4), atMost('jointSpacing', 'length', 36 * slabAt(subject))],
    params: { spacingFrom: 24, spacingTo: 36, depthShare: 0.25, bar: inch / 2, barFrom: 18 * inch, barTo: 24 * inch, embedFrom: 4 * inch, embedTo: 6 * inch },
  }),
  item({
    id: 'I2', applies: ['channel', 'concrete'], per: channels, holdPoint: 'HP-13', evidence: ['tick', 'photo', 'value'], photos: 3,
    params: { recessMin: recess.min, recessMax: recess.max },
    measures: () => ['recessUp', 'recessMiddle', 'recessDown'].map((name) => between(name, 'height', recess.min, recess.max)),
  }),
  item({
    id: 'I3', applies: ['concrete'], per: 'pour', wording: openings, evidence: ['tick', 'photo', 'value'], photos: 1,
    params: { step: recess.max, edgeMin: recess.min, edgeMax: recess.max, slopeMin: 0.01, slopeMax: 0.02, foot: 24 * hour, wheelDays: 7 },
    measures: ({ part }) => [
      atLeast('finish', 'slope', 0.01),
      part?.kind === 'channel' || part?.kind === 'catchBasin' ? between('edge', 'height', recess.min, recess.max) : atMost('step', 'height', recess.max, 0),
    ],
  }),
  item({ id: 'I6', applies: ['digging'], photos: 1, params: { flush: inch } }),
  item({ id: 'I7', applies: ['digging', 'flushable'], photos: 1, wording: firstOf({ Both: ['channel', 'basin'], Grate: ['channel'], Basin: ['basin'] }) }),
];

/** Thickness of the slab at the pour: of the cut there, or of the thinnest of the job. */
function slabAt({ document: { construction: { slabCuts } }, part }: Subject): number {
  const here = slabCuts.filter((cut) => cut.part === part?.id);
  return Math.min(...(here.length > 0 ? here : slabCuts).map(({ thickness }) => thickness));
}
