/**
 * Which items open a hold point and which it guards, by template id.
 * `byPart`: each part has its own, so that two channels may be poured on two days.
 */
export interface HoldPointRule {
  readonly id: string;
  readonly items: readonly string[];
  readonly guards: readonly string[];
  readonly byPart: boolean;
}

/** Guards the step to "handed over". */
export const handoverStep = 'handover';

export const holdPointRules: readonly HoldPointRule[] = [
  { id: 'HP-1', items: ['A2'], guards: ['B5', 'C1', 'C2', 'C3', 'C4', 'C5', 'C6', 'C7', 'C8'], byPart: false },
  { id: 'HP-2', items: ['B2'], guards: ['C4', 'C6', 'D2', 'E1', 'F1'], byPart: false },
  { id: 'HP-3', items: ['B5', 'B6'], guards: ['C1', 'C2'], byPart: false },
  // The scan of HP-3 comes before the first hole of HP-3.
  { id: 'HP-3 scan', items: ['B6'], guards: ['B5'], byPart: false },
  { id: 'HP-4', items: ['C3'], guards: ['C4', 'C6'], byPart: false },
  { id: 'HP-5', items: ['D2'], guards: ['D3', 'I3'], byPart: true },
  { id: 'HP-6', items: ['E1'], guards: ['E5'], byPart: true },
  { id: 'HP-7', items: ['E5'], guards: ['E6'], byPart: true },
  { id: 'HP-8', items: ['F2'], guards: ['F7', 'I6'], byPart: false },
  { id: 'HP-9', items: ['F5', 'F6', 'F7'], guards: ['G3'], byPart: false },
  { id: 'HP-10', items: ['G3'], guards: ['G7'], byPart: false },
  { id: 'HP-11', items: ['G6'], guards: ['G7'], byPart: false },
  { id: 'HP-12', items: ['H1'], guards: ['J1', 'J2'], byPart: false },
  { id: 'HP-13', items: ['D4', 'I1', 'I2'], guards: ['I3'], byPart: true },
  { id: 'HP-14', items: ['J1', 'J4'], guards: ['J8', 'J9'], byPart: false },
  { id: 'HP-15', items: ['J7', 'J9'], guards: [handoverStep], byPart: false },
];
