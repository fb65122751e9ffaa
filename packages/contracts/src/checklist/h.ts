import { item } from './types.ts';

/** H. Electrical. Voltage drop: an informational note of the electrical code, from memory. Sound level: ours. */
export const groupH = [
  item({
    id: 'H1', applies: ['pump'], holdPoint: 'HP-12', evidence: ['photo', 'document', 'signature'], photos: 1, signers: ['electrician'], params: { drop: 0.05 },
  }),
  item({ id: 'H2', applies: ['pump', 'alarm'], photos: 1, params: { sound: 65 } }),
  item({ id: 'H3', applies: ['pump', 'backup'], photos: 1 }),
];
