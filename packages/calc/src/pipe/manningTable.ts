/**
 * Manning n of closed conduits that run part full: least, normal, greatest.
 *
 * Limits: old materials; for plastic pipe see plasticManning
 * Source: Chow 1959, table 5-6 part A
 * Checked against: fixtures/pipe/manningConduits.csv, every line
 */
export const conduitManning = {
  brass: [0.009, 0.01, 0.013],
  steelLockbarAndWelded: [0.01, 0.012, 0.014],
  steelRivetedAndSpiral: [0.013, 0.016, 0.017],
  castIronCoated: [0.01, 0.013, 0.014],
  castIronUncoated: [0.011, 0.014, 0.016],
  wroughtIronBlack: [0.012, 0.014, 0.015],
  wroughtIronGalvanized: [0.013, 0.016, 0.017],
  corrugatedMetalSubdrain: [0.017, 0.019, 0.021],
  corrugatedMetalStormdrain: [0.021, 0.024, 0.03],
  cementNeatSurface: [0.01, 0.011, 0.013],
  cementMortar: [0.011, 0.013, 0.015],
  concreteCulvertStraight: [0.01, 0.011, 0.013],
  concreteCulvertWithBends: [0.011, 0.013, 0.014],
  concreteFinished: [0.011, 0.012, 0.014],
  concreteSewerWithManholes: [0.013, 0.015, 0.017],
  concreteUnfinishedSteelForm: [0.012, 0.013, 0.014],
  concreteUnfinishedSmoothForm: [0.012, 0.014, 0.016],
  concreteUnfinishedRoughForm: [0.015, 0.017, 0.02],
  woodStave: [0.01, 0.012, 0.014],
  woodLaminatedTreated: [0.015, 0.017, 0.02],
  clayCommonDrainageTile: [0.011, 0.013, 0.017],
  clayVitrifiedSewer: [0.011, 0.014, 0.017],
  clayVitrifiedSewerWithManholes: [0.013, 0.015, 0.017],
  clayVitrifiedSubdrain: [0.014, 0.016, 0.018],
  brickworkGlazed: [0.011, 0.013, 0.015],
  brickworkLinedWithCementMortar: [0.012, 0.015, 0.017],
  brickworkSanitarySewerWithSlime: [0.012, 0.013, 0.016],
  brickworkPavedInvert: [0.016, 0.019, 0.02],
  brickworkRubbleMasonry: [0.018, 0.025, 0.03],
} as const satisfies Record<string, readonly [number, number, number]>;

/**
 * Manning n of pipes that are laid today.
 * Source: PVC, polyethylene, concrete and clay: Winchester IN code after FHWA; perforated plastic: Austin drainage manual table 5-2;
 * corrugated inner wall: middle of 0.018 to 0.025, as in FHWA HEC-22
 * Checked against: the codes' own figures
 */
export const pipeManning = { pvc: 0.01, polyethylene: 0.011, perforatedPlastic: 0.02, corrugatedInside: 0.022, concrete: 0.013, clay: 0.013 } as const;

/**
 * Manning n of gutters along a street or drive.
 * Source: FHWA HEC-22 table 4-3, as TxDOT prints it
 * Checked against: fixtures/pipe/gutterManning.json, row 7.gutter
 */
export const gutterManning = {
  asphaltSmooth: 0.013, asphaltRough: 0.016, concreteWithSmoothAsphalt: 0.013, concreteWithRoughAsphalt: 0.015, concreteFloated: 0.014, concreteBroomed: 0.016,
} as const;
