import { atEach, atLeast, atMost, foot, inch, noted, of, within } from './measures.ts';
import { buriedLines } from './traits.ts';
import { item } from './types.ts';
import type { Measure, Subject, TextParams } from './types.ts';

const quarter = inch / 4;
const clearance = 12 * inch;
/** The widest of the strips in which the states have the ground opened by hand, 18 to 24 in each side of a mark: further off a line is not crossed. */
const strip = 24 * inch;

/** C. Cut, break, dig. Silica: 29 CFR 1926.1153 Table 1. Excavation: 29 CFR 1926.651 and .652. The rest is common practice or ours. */
export const groupC = [
  item({
    id: 'C1', applies: ['concrete'], per: 'slabCut', evidence: ['tick', 'photo', 'value'], photos: 1, params: { tolerance: quarter, overcut: inch },
    measures: () => [within('sawLine', 'height', 0, quarter), atMost('overcut', 'height', inch, 0)],
  }),
  item({
    id: 'C2', applies: ['concrete'], per: 'slabCut', evidence: ['tick', 'photo', 'value'], photos: 1, params: { void: 2 * inch },
    measures: () => [atMost('voidUnderSlab', 'height', 2 * inch, 0)],
  }),
  item({
    id: 'C3', applies: ['always'], per: 'line', holdPoint: 'HP-4', evidence: ['tick', 'photo', 'value'], photos: 1, params: { clearance, strip },
    wording: ({ line }) => (line === null ? null : line.isPrivate ? 'Private' : 'Line'), measures: crossings, figures: lineNames,
    pictures: ({ document, line }) => (line === null ? document.site.utilities.length : 1),
  }),
  item({
    id: 'C4', applies: ['buriedLine'], per: { kinds: buriedLines, together: true }, evidence: ['tick', 'photo', 'value'], photos: 1, params: { tolerance: quarter },
    measures: atEach(() => [within('trenchLine', 'height', 0, quarter)]),
  }),
  item({ id: 'C5', applies: ['digging'], holdPoint: 'HP-trench', daily: true, photos: 1, texts: () => ['competentPerson'], params: { spoil: 2 * foot, ladderFrom: 4 * foot, ladderWithin: 25 * foot, protectFrom: 5 * foot } }),
  item({
    id: 'C6', applies: ['pump'], per: { kinds: ['basin'] }, evidence: ['tick', 'photo', 'value'], photos: 1,
    params: { tolerance: quarter, stoneFrom: 4 * inch, stoneTo: 6 * inch },
    measures: of('basin', (basin) => [within('pitAcross', 'height', 0, quarter), noted('waterLevel', 'level', basin.floorLevel)]),
  }),
  item({ id: 'C7', applies: ['trenchNearHouse'], photos: 1 }),
  item({ id: 'C8', applies: ['foundationNear'], signers: ['owner'] }),
];

/** Depth and clearance of each line. A line that was marked but is not crossed is measured off the trench in their place. */
function crossings({ document, line }: Subject): readonly Measure[] {
  const lines = line === null ? document.site.utilities : [line];
  return lines.flatMap(({ id }): Measure[] => {
    const off = `offTrench:${id}`;
    const unless = line === null ? {} : { unless: off };
    return [
      { ...noted(`depth:${id}`, 'height'), ...unless }, { ...atLeast(`clearance:${id}`, 'height', clearance), ...unless },
      ...(line === null ? [] : [{ ...atLeast(off, 'length', strip), optional: true }]),
    ];
  });
}

/** What each line is called, for whoever measures at it. */
function lineNames({ document, line }: Subject): TextParams {
  if (line !== null) return { line: line.name, [`at:${line.id}`]: line.name };
  return Object.fromEntries(document.site.utilities.map(({ id, name }) => [`at:${id}`, name]));
}
