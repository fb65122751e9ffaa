/**
 * Runoff coefficients C by surface, least and greatest [-].
 * A lawn is flat up to 2 %, steep above 7 %.
 *
 * Limits: for storms of 5 to 10 years; the mean of a range is a start, not an answer
 * Source: ASCE/WPCF manual 37 (1969), as in USDA-NRCS Hydrology Training Series module 206D
 * Checked against: fixtures/runoff/runoffCoefficients.csv, every line
 */
export const coefficientRanges = {
  lawnSandyFlat: [0.05, 0.1],
  lawnSandyAverage: [0.1, 0.15],
  lawnSandySteep: [0.15, 0.2],
  lawnHeavyFlat: [0.13, 0.17],
  lawnHeavyAverage: [0.18, 0.22],
  lawnHeavySteep: [0.25, 0.35],
  businessDowntown: [0.7, 0.95],
  businessNeighborhood: [0.5, 0.7],
  singleFamily: [0.3, 0.5],
  multiUnitsDetached: [0.4, 0.6],
  multiUnitsAttached: [0.6, 0.75],
  suburban: [0.25, 0.4],
  apartments: [0.5, 0.7],
  industryLight: [0.5, 0.8],
  industryHeavy: [0.6, 0.9],
  parks: [0.1, 0.25],
  playgrounds: [0.2, 0.35],
  railroadYards: [0.2, 0.4],
  unimproved: [0.1, 0.3],
  streetAsphalt: [0.7, 0.95],
  streetConcrete: [0.8, 0.95],
  streetBrick: [0.7, 0.85],
  drivesAndWalks: [0.75, 0.85],
  roofs: [0.75, 0.95],
} as const satisfies Record<string, readonly [number, number]>;
