import { describe, expect, it } from 'vitest';
import {
  adjustByDistance, alarmReserve, bagsFor, beijGutterWidth, chanceInYears, codeSlope, concreteMass, criticalDepthIn, curvilinearOrdinate, cycleWithRunBack, depthOfEnergy, designInfiltration,
  detentionShare, dishAt, dishHeight, dryWellEmptying, dryWellSeepage, dryWellStep, dupuitFlow, emitterHead, flotationCheck, formulaIntensity, fullFlowLosses, gammaOrdinate,
  graphicalPeak, grateEdge, gravityWithBand, gutterOutletFlow, haaland, blasius, hoseCalibration, hortonDepth, infiltrationRate, insideDiameter, interceptorFlow, izzardTime, lateralProfile, leaderDiameterFor,
  levelAtMark, lineFilling, lineFriction, looseVolume, openingHead, outletCapacity, parallelOneLine, partialFromAnnual, peakRateFactor, percolationVerdict, pipeHead, pondedInfiltration,
  pumpCurve, recurrenceInterval, reliefSpacing, sagGrateHead, scsHyetograph, sealedLineCapacity, sealedRoofLine, sheetAtLine, soilGroupOfRate, standingLine, surfaceReturn, taperedLevel,
  taperedVolume, tractiveSlope, travelTime, truckLoads, unitHydrograph, unitPeak, unitPeakDischarge, userSeries, voltageDrop, volumeAtMark, worksheetHead,
} from './index.ts';
import { outcome } from './testing/outcome.ts';

const curve = pumpCurve([{ flow: 0, head: 6 }, { flow: 0.003, head: 1 }]);
const path = { staticHead: 1, equivalentLength: 40, innerDiameter: 0.04, hazenWilliamsC: 140, openingHead: 0 };
const ditch = { kind: 'trapezoidal', width: 0.1, sideSlope: 1 } as const;
const run = { shape: ditch, reaches: [{ length: 5, slope: 0.01, drop: 0 }], roughness: 0.02, headFlow: 0 };
const pipe = { length: 20, slope: 0.005, roughness: 0.012, tailwater: 0 };
const full = { diameter: 0.1, length: 12, roughness: 0.011, invertUp: 0.2, invertDown: 0, exitLoss: 1, minorLoss: 0.4, entranceLoss: 0.5 };
const roof = { diameter: 0.1, length: 15, roughness: 0.01, bendLoss: 2, exitLoss: 1, lidLevel: 0, openingHead: 0.03, lowestOpenJoint: 0.4, lowestInvert: -0.4, weepLevel: null };
const well = { area: 4, perimeter: 8, depth: 1.2, voids: 0.4, baseRate: 2e-6, sideRate: 3e-6 };
const emitter = { lidMass: 0.6, lidArea: 0.0085, openArea: 0.004, coefficient: 0.6 };
const marks = [{ level: 0, volume: 0 }, { level: 1, volume: 0.4 }];
const molded = { bottomDiameter: 0.4, topDiameter: 0.5, height: 2 };
const line = { points: [{ x: 0, level: 0 }, { x: 20, level: 1 }], innerDiameter: 0.04, hazenWilliamsC: 140, fittingLength: 2 };
const dish = { topArea: 40, depth: 2, shape: 1 };
const soil = { conductivity: 1e-6, layerBelow: 0.5, waterAbove: 0.4 };
const site = { type: 'II', area: 1e5, timeOfConcentration: 3600, curveNumber: 80, rain: 90, pondFactor: 1 } as const;
const basin = { diameter: 0.76, floorLevel: 0, rimLevel: 1.2, collarVolume: 0.1, emptyMass: 20 };

/** Every method with one of its numbers left open. */
const methods: Readonly<Record<string, (x: number) => unknown>> = {
  'correction': (x) => adjustByDistance(x, [1], 2), 'dish height': (x) => dishAt(dish, x), 'dish volume': (x) => dishHeight(dish, x), 'dish shape': (x) => dishAt({ ...dish, shape: x }, 1),
  'formula time': (x) => formulaIntensity({ a: 96.6, b: 0.97, c: 13.9 }, x), 'chance': recurrenceInterval, 'annual period': partialFromAnnual, 'years': (x) => chanceInYears(10, x),
  'day depth': (x) => scsHyetograph('II', x, 3600), 'day block': (x) => scsHyetograph('II', 50, x), 'gauge block': (x) => userSeries([{ time: 0, depth: 0 }, { time: 3600, depth: 5 }], x),
  'gauge time': (x) => userSeries([{ time: 0, depth: 0 }, { time: x, depth: 5 }], 1800), 'travel': (x) => travelTime([{ length: 10, velocity: x }]), 'soil rate': soilGroupOfRate,
  'Izzard intensity': (x) => izzardTime(0.012, 10, 0.01, x), 'Izzard slope': (x) => izzardTime(0.012, 10, x, 1e-5), 'ponded time': (x) => pondedInfiltration({ conductivity: 1e-6, suctionDeficit: 0.05 }, x),
  'suction': (x) => pondedInfiltration({ conductivity: 1e-6, suctionDeficit: x }, 3600), 'depth taken': (x) => infiltrationRate({ conductivity: 1e-6, suctionDeficit: 0.05 }, x),
  'Horton time': (x) => hortonDepth({ initialRate: 2e-5, finalRate: 1e-6, decay: 1e-3 }, x), 'curvilinear': curvilinearOrdinate, 'gamma ratio': (x) => gammaOrdinate(3.7, x), 'gamma shape': peakRateFactor,
  'unit area': (x) => unitPeak(x, 3600, 0.01), 'hydrograph area': (x) => unitHydrograph({ area: x, timeOfConcentration: 1800, duration: 180, shape: 'curvilinear' }),
  'hydrograph time': (x) => unitHydrograph({ area: 1e5, timeOfConcentration: x, duration: 0.1, shape: 'curvilinear' }), 'hydrograph shape': (x) => unitHydrograph({ area: 1e5, timeOfConcentration: 1800, duration: 180, shape: x }),
  'graph time': (x) => unitPeakDischarge('II', x, 0.2), 'graph rain': (x) => graphicalPeak({ ...site, rain: x }), 'detention': (x) => detentionShare('II', x),
  'Beij length': (x) => beijGutterWidth(0.75, x, 3e-5, 90), 'outlet of a gutter': (x) => gutterOutletFlow(0.08, x), 'leader for': leaderDiameterFor, 'grate flow': (x) => sagGrateHead({ perimeter: 1, openArea: 0.02, clogging: 0.5 }, x),
  'grate length': (x) => grateEdge(x, 0.3, 2, 2), 'ditch flow': (x) => criticalDepthIn(ditch, x), 'round flow': (x) => criticalDepthIn({ kind: 'roundBottom', width: 0.1 }, x), 'energy': (x) => depthOfEnergy(ditch, 0.003, x),
  'profile flow': (x) => lateralProfile(run, x, null, 10), 'profile end': (x) => lateralProfile(run, 0.003, x, 10), 'profile slope': (x) => lateralProfile({ ...run, reaches: [{ length: 5, slope: x, drop: 0 }] }, 0.003, null, 10),
  'profile drop': (x) => lateralProfile({ ...run, reaches: [{ length: 5, slope: 0, drop: x }] }, 0.003, null, 10), 'profile n': (x) => lateralProfile({ ...run, roughness: x }, 0.003, null, 10),
  'pond over an outlet': (x) => outletCapacity(x, 0.1, null), 'pond over a pipe': (x) => outletCapacity(x, 0.1, pipe), 'pipe flow': (x) => pipeHead(x, 0.1, pipe), 'pipe tailwater': (x) => pipeHead(0.005, 0.1, { ...pipe, tailwater: x }),
  'full flow': (x) => fullFlowLosses(full, x, 0.5), 'full tailwater': (x) => fullFlowLosses(full, 0.005, x), 'roof flow': (x) => sealedRoofLine(roof, x), 'roof joint': (x) => sealedLineCapacity({ ...roof, lowestOpenJoint: x }),
  'code slope': codeSlope, 'wall': (x) => insideDiameter(0.1, x), 'stress': (x) => tractiveSlope(0.02, x), 'interceptor': (x) => interceptorFlow(1e-5, x, 0.5), 'recharge': (x) => reliefSpacing(soil, x), 'Dupuit': (x) => dupuitFlow(1e-5, x, 0, 5),
  'tapered level': (x) => taperedVolume(molded, x), 'tapered volume': (x) => taperedLevel(molded, x), 'marked level': (x) => volumeAtMark(marks, x), 'marked volume': (x) => levelAtMark(marks, x), 'run-back': (x) => cycleWithRunBack(2, x, 0.002, 0.001),
  'alarm inflow': (x) => alarmReserve(0.1, x), 'water table': (x) => flotationCheck(basin, x), 'Haaland': (x) => haaland(x, 1e-4), 'Blasius': blasius, 'line flow': (x) => lineFriction(x, 0.04, { hazenWilliamsC: 140 }),
  'worksheet lift': (x) => worksheetHead(x, 1, 20, 0.05), 'parallel static': (x) => parallelOneLine([curve, curve], { ...path, staticHead: x }), 'parallel length': (x) => parallelOneLine([curve], { ...path, equivalentLength: x }),
  'wire length': (x) => voltageDrop(10, x, '12', 120), 'filling level': (x) => lineFilling(curve, line, x), 'filling diameter': (x) => lineFilling(curve, { ...line, innerDiameter: x }, 0), 'standing bore': (x) => standingLine(line.points, x, false, null),
  'well depth': (x) => dryWellSeepage(well, x), 'well inflow': (x) => dryWellStep(well, 0.5, x, 60), 'well time': (x) => dryWellStep(well, 0.5, 1e-4, x), 'well from': (x) => dryWellEmptying(well, x, 0), 'lid mass': (x) => openingHead(x, 0.01),
  'emitter flow': (x) => emitterHead(emitter, x), 'emitter blocked': (x) => emitterHead(emitter, 0.001, x), 'outlet ground': (x) => surfaceReturn(x, 1, null, 10), 'sheet flow': (x) => sheetAtLine(x, 5, 0.02, 0.2),
  'gravity doubt': (x) => gravityWithBand({ id: 'K1', name: '', kind: 'daylight', level: 0, distance: 10, tailwater: 0, collectorInvert: 1 }, x), 'gravity distance': (x) => gravityWithBand({ id: 'K1', name: '', kind: 'daylight', level: 0, distance: x, tailwater: 0, collectorInvert: 1 }, 0),
  'hose bucket': (x) => hoseCalibration(x, [40]), 'hose fill': (x) => hoseCalibration(0.02, [x]), 'hole radius': (x) => designInfiltration(x, []), 'hole drop': (x) => designInfiltration(0.1, [{ interval: 1800, startDepth: 0.2, drop: x }]),
  'percolation drop': (x) => percolationVerdict([{ interval: 1800, drop: x }]), 'bank': (x) => looseVolume(x, 0.3), 'loads': (x) => truckLoads(x, 5), 'bags': (x) => bagsFor(x, 36), 'concrete': concreteMass,
};

describe('bad numbers of the single methods', () => {
  for (const [name, method] of Object.entries(methods)) {
    it(name, () => {
      expect([NaN, Infinity, -Infinity].map((x) => outcome(method, x))).toEqual(['problem', 'problem', 'problem']);
      for (const x of [0, -0, -1, 1e-300, 5e-324, 1e300, 1]) expect(outcome(method, x), String(x)).not.toBe('NaN');
    });
  }
});
