import type { SurveyContent } from '@yardfall/contracts';
import { foot, readingsOf } from './readings.ts';

/** Invented site: garage floor 100.00 ft at the foot of a drive; one set-up, closed on the floor. */
export const ridgebackSurvey: SurveyContent = {
  levelBook: {
    mode: 'heightOfInstrument', benchMark: { name: 'Garage floor', level: 100 * foot },
    readings: readingsOf('12', [
      ['Garage floor', 5.1, null, null, 'Bench mark at the door'], ['Garage lip', null, 5.16, null, ''], ['Low spot of the drive', null, 5.3, null, ''], ['Channel invert', null, 5.8, null, 'Planned'],
      ['Roadside swale flow line', null, 8.2, null, ''], ['Garage floor', null, null, 5.1, 'Closing shot'],
    ]),
  },
  points: [
    { point: 'Garage floor', role: 'floor', station: -1 * foot, distance: null, tailwater: null }, { point: 'Garage lip', role: 'sill', station: 0, distance: null, tailwater: null },
    { point: 'Low spot of the drive', role: 'lowSpot', station: 2 * foot, distance: null, tailwater: null },
    { point: 'Channel invert', role: 'collectorInvert', station: 2 * foot, distance: null, tailwater: null },
    { point: 'Roadside swale flow line', role: 'outlet', station: 85 * foot, distance: 85 * foot, tailwater: 0 },
  ],
  stageArea: [], drainTests: [], observations: [],
};
