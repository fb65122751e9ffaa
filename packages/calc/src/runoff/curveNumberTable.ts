import type { SoilGroup } from './soilGroup.ts';

/**
 * Curve numbers by cover, for soil groups A, B, C, D.
 *
 * Limits: average runoff condition, Ia = 0.2 S
 * Source: USDA TR-55 (1986), table 2-2a
 * Checked against: fixtures/runoff/curveNumbersUrban.csv, every line
 */
export const curveNumbers = {
  openSpacePoor: [68, 79, 86, 89],
  openSpaceFair: [49, 69, 79, 84],
  openSpaceGood: [39, 61, 74, 80],
  paved: [98, 98, 98, 98],
  streetCurbed: [98, 98, 98, 98],
  streetDitched: [83, 89, 92, 93],
  gravel: [76, 85, 89, 91],
  dirt: [72, 82, 87, 89],
  desertNatural: [63, 77, 85, 88],
  desertArtificial: [96, 96, 96, 96],
  commercial: [89, 92, 94, 95],
  industrial: [81, 88, 91, 93],
  lotEighthAcre: [77, 85, 90, 92],
  lotQuarterAcre: [61, 75, 83, 87],
  lotThirdAcre: [57, 72, 81, 86],
  lotHalfAcre: [54, 70, 80, 85],
  lotOneAcre: [51, 68, 79, 84],
  lotTwoAcres: [46, 65, 77, 82],
  newlyGraded: [77, 86, 91, 94],
} as const satisfies Record<string, readonly [number, number, number, number]>;

const PLACE = { A: 0, B: 1, C: 2, D: 3 } as const;

/** Curve number of a cover on a soil group [-]. Same source. */
export function curveNumberOf(cover: keyof typeof curveNumbers, group: SoilGroup): number {
  return curveNumbers[cover][PLACE[group]];
}
