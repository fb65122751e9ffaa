import type { LevelReading, SurveyContent } from '@yardfall/contracts';
import { foot, gallon, inch, readingsOf } from './readings.ts';

/** Invented site: finished floor 100.00 ft; two set-ups, closed on the floor. */
const readings: LevelReading[] = readingsOf('11', [
  ['Finished floor', 4.52, null, null, 'Bench mark at the patio door'],
  ['Slider track', null, 4.59, null, 'Lowest place at which water steps in'],
  ['Patio at the door', null, 4.67, null, ''],
  ['Patio low spot', null, 4.9, null, '6 ft out'],
  ['Patio rim', null, 4.54, null, ''],
  ['Channel invert', null, 5.37, null, 'Planned invert held on the rod'],
  ['Lawn at the basin', null, 4.52, null, ''],
  ['Lawn mid yard', null, 4.62, null, ''],
  ['Side gate step', null, null, 4.7, 'Turning point'],
  ['Side gate step', 4.31, null, null, ''],
  ['Lawn at the emitter', null, 4.33, null, ''],
  ['Street gutter flow line', null, 4.78, null, 'Flow line, not the top of the curb'],
  ['Easement swale flow line', null, 4.73, null, ''],
  ['Finished floor', null, null, 4.13, 'Closing shot'],
]);

const at = (point: string, role: SurveyContent['points'][number]['role'], station: number | null = null, distance: number | null = null) =>
  ({ point, role, station: station === null ? null : station * foot, distance: distance === null ? null : distance * foot, tailwater: distance === null ? null : 0 });

export const ternHollowSurvey: SurveyContent = {
  levelBook: { mode: 'heightOfInstrument', benchMark: { name: 'Finished floor', level: 100 * foot }, readings },
  points: [
    at('Finished floor', 'floor', -1), at('Slider track', 'sill', 0), at('Patio at the door', 'grade', 0.3), at('Patio low spot', 'lowSpot', 6), at('Patio rim', 'rim', 14),
    at('Channel invert', 'collectorInvert', 6), at('Lawn at the basin', 'grade', 20), at('Lawn mid yard', 'grade', 70), at('Lawn at the emitter', 'grade', 132),
    at('Street gutter flow line', 'outlet', 140, 140), at('Easement swale flow line', 'outlet', 150, 150),
  ],
  stageArea: [[99.62, 20], [99.7, 140], [99.8, 300], [99.93, 640], [99.98, 900]].map(([level = 0, area = 0]) => ({ level: level * foot, area: area * foot ** 2 })),
  drainTests: [
    { id: '01930000-0000-7000-8000-000000000d01', name: 'Old 4 in patio drain', diameter: 4 * inch, hoseFlow: (7.5 * gallon) / 60, backedUpAfter: 360, dyeSeen: false, cameraStop: 31 * foot },
  ],
  observations: [],
};
