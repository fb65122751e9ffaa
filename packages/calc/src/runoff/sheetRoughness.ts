/**
 * Manning n of sheet flow by surface.
 *
 * Limits: for depths of an inch or less; not for channels
 * Source: USDA TR-55 (1986), table 3-1
 * Checked against: fixtures/runoff/sheetFlowRoughness.csv, every line
 */
export const sheetRoughness = {
  smooth: 0.011,
  fallow: 0.05,
  cultivatedLittleResidue: 0.06,
  cultivatedMuchResidue: 0.17,
  shortGrass: 0.15,
  denseGrass: 0.24,
  bermudagrass: 0.41,
  range: 0.13,
  woodsLight: 0.4,
  woodsDense: 0.8,
} as const satisfies Record<string, number>;
