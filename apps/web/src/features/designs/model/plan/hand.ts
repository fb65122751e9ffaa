import type { PlanShape, PlanUse } from '@yardfall/calc';

/** What a tap on the plan does. */
export type Hand = 'choose' | 'area' | 'line' | 'place' | 'spot' | 'tie';

export const hands: readonly Exclude<Hand, 'tie'>[] = ['choose', 'area', 'line', 'place', 'spot'];

export const usesOf: Readonly<Record<PlanShape['kind'], readonly PlanUse[]>> = {
  area: ['house', 'roof', 'paving', 'lawn', 'bed', 'gravel', 'permeablePaving', 'pool', 'neighbour', 'septic', 'lot'],
  line: ['wall', 'gutter', 'pipe', 'drain', 'utility', 'measure'],
  place: ['sill', 'part', 'tree'],
};

export const leastPoints: Readonly<Record<PlanShape['kind'], number>> = { area: 3, line: 2, place: 1 };

export const isDrawing = (hand: Hand): hand is 'area' | 'line' | 'place' => hand === 'area' || hand === 'line' || hand === 'place';
