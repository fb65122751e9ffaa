import type { DesignDocument } from '@yardfall/calc';
import { atMost, noted, there } from './measures.ts';
import { ownLineTexts } from './ownLines.ts';
import { beyond, partFigures, partLines } from './partLines.ts';
import { hasTrait } from './traits.ts';
import { item } from './types.ts';
import type { Measure, Subject } from './types.ts';
import { firstOf } from './wordings.ts';

const plate = ({ document }: Subject) => (hasTrait(document, 'pump') ? ['pumpModel', 'pumpSerial'] : []);

/** Heavy rain that the ground is not opened before. */
const chance = 0.4;

/** Nobody draws where an old drain runs: saw, breaker and shovel are taken to meet it wherever there is one. */
const cutsOldDrain = (document: DesignDocument): boolean => hasTrait(document, 'oldDrain') && hasTrait(document, 'digging');

/** Where the old drain is cut, likely rain is no reason to stay at home and one to have a pump along. */
function weather({ document }: Subject): readonly Measure[] {
  if (!cutsOldDrain(document)) return [atMost('rainChance', 'share', chance, 0)];
  return [noted('rainChance', 'share', 0), { ...there('bypassPump'), when: { name: 'rainChance', least: chance } }];
}

/** A. Before the truck leaves. Acceptance figures are common practice or ours unless a source is named. */
export const groupA = [
  item({ id: 'A1', applies: ['always'], signers: ['owner'], params: { days: 3 }, afterCancellation: true }),
  item({ id: 'A2', applies: ['digging'], holdPoint: 'HP-1', evidence: ['tick', 'photo', 'document'], photos: 1 }),
  item({ id: 'A3', applies: ['digging'], evidence: ['tick', 'photo', 'signature'], photos: 1, signers: ['crewLead', 'homeowner'], texts: () => ownLineTexts }),
  item({ id: 'A4', applies: ['outletPermission'], evidence: ['tick', 'photo', 'document'], photos: 1, signers: ['owner'] }),
  item({ id: 'A5', applies: ['pumpOrConcrete'], evidence: ['tick', 'photo', 'value'], photos: 2, params: { beyond }, wording: firstOf({ Both: ['pump', 'concrete'], Pump: ['pump'] }), texts: plate, measures: partLines, figures: partFigures }),
  item({
    id: 'A6', applies: ['always'], evidence: ['tick', 'photo', 'value'], photos: 1, params: { chance }, measures: weather,
    asks: ({ document }) => (cutsOldDrain(document) ? { holdPoint: 'HP-rain' } : {}), wording: firstOf({ OldDrain: ['oldDrain', 'digging'] }),
  }),
];
