import { atLeast, atMost, noted } from './measures.ts';
import { item } from './types.ts';

/** Share of the voltage that may be lost on the way. */
const drop = 0.05;
const sound = 65;

/** H. Electrical. Voltage drop: an informational note of the electrical code, from memory. Sound level: ours. */
export const groupH = [
  item({
    id: 'H1', applies: ['pump'], holdPoint: 'HP-12', evidence: ['photo', 'document', 'value', 'signature'], photos: 3, signers: ['electrician'], params: { drop },
    measures: () => [atLeast('gfciTrips', 'count', 1), atMost('voltageDrop', 'share', drop, 0)],
  }),
  item({ id: 'H2', applies: ['pump', 'alarm'], evidence: ['tick', 'photo', 'value'], photos: 1, params: { sound }, measures: () => [atLeast('sound', 'number', sound)] }),
  item({ id: 'H3', applies: ['pump', 'backup'], evidence: ['tick', 'photo', 'value'], photos: 1, measures: () => [noted('batteryVolts', 'number', 12)] }),
];
