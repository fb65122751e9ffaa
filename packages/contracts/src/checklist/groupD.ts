import type { Part } from '@yardfall/calc';
import { atEach, atLeast, atMost, between, foot, hour, inch, of, within } from './measures.ts';
import { item } from './types.ts';
import type { Subject } from './types.ts';

const sixteenth = inch / 16;
const eighth = inch / 8;
const quarter = inch / 4;

/** How far the grate lies below the slab on both sides. Ours. */
export const recess = { min: sixteenth, max: eighth };

/** D. Channel and inlets. Figures are common practice or ours. */
export const groupD = [
  item({
    id: 'D1', applies: ['channel'], per: { kinds: ['channel'], together: true }, evidence: ['tick', 'photo', 'value'], photos: 1, params: { tolerance: quarter },
    measures: atEach((part) => (part.kind === 'channel' ? [within('bedDepth', 'height', part.surround, quarter)] : [])),
  }),
  item({
    id: 'D2', applies: ['channel'], per: { kinds: ['channel'] }, holdPoint: 'HP-5', evidence: ['tick', 'photo', 'value'], photos: 2,
    params: { recessMin: recess.min, recessMax: recess.max, brace: 4 * foot, tolerance: sixteenth, 'at:left': 'checklists.side.left', 'at:right': 'checklists.side.right' },
    measures: of('channel', (channel) => [
      ...['recessUp:left', 'recessUp:right', 'recessDown:left', 'recessDown:right'].map((name) => between(name, 'height', recess.min, recess.max)), atMost('braces', 'length', 4 * foot),
      within('invertUp', 'level', channel.invertUp, sixteenth), within('invertDown', 'level', channel.invertDown, sixteenth),
    ]),
  }),
  item({ id: 'D3', applies: ['channel'], per: { kinds: ['channel'] }, photos: 1, pictures: sections }),
  item({ id: 'D4', applies: ['concrete'], per: 'pour', wording: openings, holdPoint: 'HP-13', evidence: ['photo', 'tick'], photos: 2, freshFor: 2 * hour, params: { fresh: 2 * hour } }),
  item({
    id: 'D6', applies: ['areaDrain'], per: { kinds: ['catchBasin'] }, evidence: ['tick', 'photo', 'value'], photos: 1, params: { tolerance: quarter, sump: 6 * inch },
    measures: of('catchBasin', (inlet) => [within('rimLevel', 'level', inlet.grateLevel, quarter), atLeast('sumpDepth', 'height', 6 * inch, Math.max(inlet.sumpDepth, 6 * inch))]),
  }),
  item({ id: 'D7', applies: ['roofTieIn'], photos: 1, params: { head: 3 * foot }, pictures: ({ document }) => leaders(document.system.parts) }),
];

/** What concrete could run into, where it is poured at no channel. */
export function openings({ part }: Subject): string | null {
  return part?.kind === 'channel' ? null : part?.kind === 'catchBasin' ? 'Inlet' : 'Ends';
}

/** Channel comes in pieces of one metre, a joint between two of them; more than eight are taken in fewer pictures. Common practice. */
function sections({ part }: Subject): number {
  return part?.kind === 'channel' ? Math.min(Math.max(Math.ceil(part.length - 1e-6) - 1, 1), 8) : 1;
}

/** Leaders that come down to a buried line; a line that names none has one. */
function leaders(parts: readonly Part[]): number {
  return parts.reduce((sum, part) => sum + (part.kind === 'leader' ? part.count : 0), 0);
}
