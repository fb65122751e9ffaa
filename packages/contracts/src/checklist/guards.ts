/**
 * Which items open a hold point and which it guards, by template id.
 * `byPart`: each part has its own, so that two channels may be poured on two days.
 */
export interface HoldPointRule {
  readonly id: string;
  readonly items: readonly string[];
  readonly guards: readonly string[];
  readonly byPart: boolean;
  /** Only steps whose own record names this hold point open it: a list of earlier rules, or a design that needs none, has no such step. */
  readonly named?: string;
  /** The look at it counts for one day, until all these steps are done. */
  readonly until?: readonly string[];
  /** What it guards may begin before anybody looked, and waits for every look after the first. */
  readonly again?: true;
}

/** Backfill: when all of it is done no trench is open any more. */
const covered = ['E6', 'G7'];
/** Work of people who stand in the trench or pit: 29 CFR 1926.651(k)(1) has it looked at before they go in, each day and after rain. Work on the slab, on the bench and in the basin is not in it. */
const inTrench = ['E1', 'E2', 'E3', 'E5', 'E6', 'F1', 'F2', 'G1', 'G3', 'G4', 'G7'];

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
  // Saw, breaker and digging cut what drained the place until then.
  { id: 'HP-rain', named: 'HP-rain', items: ['A6'], guards: ['C1', 'C2', 'C4', 'C6'], byPart: false },
  { id: 'HP-trench', named: 'HP-trench', items: ['C5'], guards: inTrench, byPart: false, until: covered },
  // There is no trench to be looked at before the first of it is dug.
  { id: 'HP-trench again', named: 'HP-trench', items: ['C5'], guards: ['C4', 'C6'], byPart: false, until: covered, again: true },
  { id: 'HP-cure', named: 'HP-cure', items: ['F4', 'G1'], guards: ['G3'], byPart: false },
  { id: 'HP-15', items: ['J7', 'J9'], guards: [handoverStep], byPart: false },
];
