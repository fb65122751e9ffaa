/**
 * Rules for pits and soakaways that stand beside the calculation.
 * Source: Copeland BC guide and Buckinghamshire guide to BRE Digest 365 practice: 5 m from buildings, 2.5 m from the boundary,
 * 10 mm in 5 min for surfaces up to 25 m2, infiltration of at least 1e-6 m/s, half empty in 24 h, 1 m above ground water
 * Checked against: fixtures/outlet/dryWell.json, row 17.10
 */
export const SOAKAWAY_RULES = {
  fromBuilding: 5, fromBoundary: 2.5, smallArea: 25, smallStormDepth: 10, smallStormDuration: 300, leastInfiltration: 1e-6, halfEmptyWithin: 86400, aboveGroundWater: 1,
} as const;
