import { atLeast, atMost, inch, minute, noted } from './measures.ts';
import { tieFigures, tieFrom, tieMeasures } from './ties.ts';
import { item } from './types.ts';
import { firstOf } from './wordings.ts';

/** 50 US gallons. */
const drum = 50 * 3.785411784e-3;

/** J. Prove and hand over. Figures are common practice or ours. */
export const groupJ = [
  // The document is the pump-down test on record: its verdict stands in the proof.
  item({ id: 'J1', applies: ['pump'], per: { kinds: ['pump'] }, holdPoint: 'HP-14', evidence: ['tick', 'photo', 'document'], photos: 1, params: { runs: 3, pass: 0.1, warn: 0.2 } }),
  item({
    id: 'J2', applies: ['pump'], per: { kinds: ['pump'] }, evidence: ['tick', 'photo', 'value'], photos: 1, params: { cycles: 5 },
    measures: () => [atLeast('starts', 'count', 5), noted('rise', 'height')],
  }),
  item({
    id: 'J4', applies: ['always'], holdPoint: 'HP-14', evidence: ['tick', 'photo', 'value', 'signature'], photos: 1, signers: ['crewLead', 'homeowner'],
    wording: firstOf({ Grate: ['channel'], Inlets: ['areaDrain'], Roof: ['roofTieIn'] }),
    params: { from: 10 * minute, to: 15 * minute, pond: inch / 8, after: 60 }, measures: () => [atMost('pond', 'height', inch / 8, 0)],
  }),
  item({
    id: 'J5', applies: ['pump'], evidence: ['tick', 'photo', 'value', 'signature'], photos: 1, measures: () => [noted('slugPond', 'height'), noted('slugClear', 'minutes', 5 * minute)],
    signers: ['crewLead', 'homeowner'], params: { drum },
  }),
  item({
    id: 'J7', applies: ['always'], holdPoint: 'HP-15', evidence: ['tick', 'photo', 'value'], photos: 1, params: { ties: 2 },
    measures: tieMeasures, figures: tieFigures, texts: () => tieFrom,
  }),
  item({ id: 'J8', applies: ['always'], evidence: ['photo', 'signature'], photos: 1, signers: ['homeowner'], params: { tests: 4 }, wording: firstOf({ Pump: ['pump', 'alarm', 'channel'], Alarm: ['pump', 'alarm'], Plain: ['pump'] }) }),
  item({ id: 'J9', applies: ['always'], holdPoint: 'HP-15', evidence: ['tick', 'signature'], signers: ['homeowner', 'owner'] }),
];
