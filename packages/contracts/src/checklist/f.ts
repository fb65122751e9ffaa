import type { Basin } from '@yardfall/calc';
import { cureOfLine, gluing } from './gluing.ts';
import { atLeast, between, foot, inch, of, within } from './measures.ts';
import { item } from './types.ts';
import type { Measure } from './types.ts';

/** Concrete of one 80 lb bag: 0.6 ft3. Common practice. */
const bagVolume = 0.6 * foot ** 3;
const basins = { kinds: ['basin'] } as const;

/** F. Basin, pump, riser. Figures are common practice or ours. */
export const groupF = [
  item({
    id: 'F1', applies: ['pump'], per: basins, evidence: ['tick', 'photo', 'value'], photos: 1,
    params: { tolerance: inch / 4, plumbOver: 4 * foot, lidMin: inch / 4, lidMax: inch / 2, bell: 4 * inch, hole: 4.5 * inch },
    measures: of('basin', (basin) => [within('plumb', 'height', 0, inch / 4), within('rimLevel', 'level', basin.rimLevel, inch / 4), between('lidAboveSod', 'height', inch / 4, inch / 2)]),
  }),
  item({
    id: 'F2', applies: ['pump', 'highWater'], per: basins, holdPoint: 'HP-8', evidence: ['tick', 'photo', 'value'], photos: 2,
    measures: of('basin', collar),
  }),
  item({ id: 'F4', applies: ['pump'], per: { kinds: ['pump'] }, holdPoint: 'HP-cure', evidence: ['tick', 'photo', 'value'], photos: 1, measures: gluing, cure: cureOfLine }),
  item({
    id: 'F5', applies: ['pump'], per: { kinds: ['weepHole'] }, holdPoint: 'HP-9', evidence: ['tick', 'photo', 'value'], photos: 1,
    params: { min: inch / 8, max: (3 * inch) / 16 },
    measures: of('weepHole', (hole) => [between('weepDiameter', 'height', inch / 8, (3 * inch) / 16, hole.diameter)]),
  }),
  item({
    id: 'F6', applies: ['pump'], per: { kinds: ['checkValve'] }, concerns: ({ part }) => part?.kind === 'checkValve' && part.present, holdPoint: 'HP-9', photos: 1,
  }),
  item({
    id: 'F7', applies: ['pump'], per: basins, holdPoint: 'HP-9', evidence: ['tick', 'photo', 'value'], photos: 1,
    params: { tolerance: inch / 2, clear: 3 * inch }, measures: of('basin', marks),
  }),
  item({
    id: 'F8', applies: ['pump'], per: basins, evidence: ['tick', 'photo', 'value'], photos: 1, params: { marks: 4 },
    measures: () => [atLeast('marks', 'count', 4)],
  }),
];

function collar(basin: Basin): readonly Measure[] {
  // A hair off, so that a collar of whole bags does not ask for one more by rounding.
  const bags = Math.ceil(basin.collarVolume / bagVolume - 1e-6);
  return [atLeast('bags', 'count', Math.max(bags, 0))];
}

function marks(basin: Basin): readonly Measure[] {
  return [
    within('onLevel', 'level', basin.onLevel, inch / 2), within('offLevel', 'level', basin.offLevel, inch / 2),
    within('alarmLevel', 'level', basin.alarmLevel, inch / 2), atLeast('floatClearance', 'height', 3 * inch),
  ];
}
