import { describe, expect, it } from 'vitest';
import {
  alternatingBlock, aloneRunTime, basinArea, criticalDepth, curveNumberRunoff, cycleTime, darcyWeisbachSlope, depthAt, dutyPoint, eavesGutterCapacity, entranceHead,
  flotation, fullPipe, gravityFall, hazenWilliamsSlope, hoseTest, kinematicPlane, kirpichTime, leaderCapacity, lineVolume, outletDepth, partFullPipe, percolationPit,
  pumpCurve, pumpDown, rationalFlow, sagGrateFlow, selfCleansingSlope, sheetFlowTime, soakaway, spatiallyVariedFlow, stageCurve, volumetricLoss, weepHoleFlow, weirFlow,
} from './index.ts';
import { outcome } from './testing/outcome.ts';

const table = {
  name: '', source: '', illustrative: true, series: 'partialDuration', durations: [300, 3600, 86400], returnPeriods: [2, 100], depths: [[12, 24], [44, 100], [95, 280]], lower: null, upper: null,
} as const;
const outlet = { id: 'o', name: 'o', kind: 'curb', level: 1, distance: 10, tailwater: 0, collectorInvert: 1 } as const;
const curve = pumpCurve([{ flow: 0, head: 6 }, { flow: 0.003, head: 1 }]);
const path = { staticHead: 1, equivalentLength: 40, innerDiameter: 0.04, hazenWilliamsC: 140, openingHead: 0 };
const channel = { width: 0.1, length: 5, slope: 0, roughness: 0.01 };
const basin = { diameter: 0.76, floorLevel: 0, rimLevel: 1.2, collarVolume: 0, emptyMass: 20 };

/** Every method with one of its numbers left open. */
const methods: Readonly<Record<string, (x: number) => unknown>> = {
  'stage level': (x) => stageCurve([{ level: x, area: 1 }, { level: 2, area: 2 }]),
  'fall, distance': (x) => gravityFall({ ...outlet, distance: x }),
  'fall, level': (x) => gravityFall({ ...outlet, level: x }),
  'hose time': (x) => hoseTest(1e-3, x, 0.1),
  'rain duration': (x) => depthAt(table, x, 10),
  'rain period': (x) => depthAt(table, 3600, x),
  'storm allowance': (x) => alternatingBlock(table, 10, 86400, 300, x),
  'rational intensity': (x) => rationalFlow(0.9, x, 10),
  'loss coefficient': (x) => volumetricLoss([1], x, 0),
  'plane length': (x) => kinematicPlane({ length: x, slope: 0.01, roughness: 0.1 }, [1e-5], 60),
  'plane slope': (x) => kinematicPlane({ length: 5, slope: x, roughness: 0.1 }, [1e-5], 60),
  'plane excess': (x) => kinematicPlane({ length: 5, slope: 0.01, roughness: 0.1 }, [x], 60),
  'curve number': (x) => curveNumberRunoff(50, x),
  'sheet slope': (x) => sheetFlowTime(0.1, 10, 90, x),
  'path length': (x) => kirpichTime(x, 0.01),
  'gutter depth': (x) => eavesGutterCapacity({ shape: 'halfRound', width: 0.1, depth: x, drainageLength: 2, bendAt: null }),
  'leader': leaderCapacity,
  'grate head': (x) => sagGrateFlow({ perimeter: 1, openArea: 0.01, clogging: 0.5 }, x),
  'weir head': (x) => weirFlow(1.66, 1, x),
  'critical flow': (x) => criticalDepth(x, 0.1),
  'channel flow': (x) => spatiallyVariedFlow(channel, x, null),
  'channel slope': (x) => spatiallyVariedFlow({ ...channel, slope: x }, 0.003, null),
  'channel end': (x) => spatiallyVariedFlow(channel, 0.003, x),
  'outlet flow': (x) => outletDepth(x, 0.1, 0.1, null),
  'entrance': (x) => entranceHead(x, 0.1),
  'pipe slope': (x) => fullPipe({ diameter: 0.1, slope: x, roughness: 0.01 }),
  'pipe flow': (x) => partFullPipe({ diameter: 0.1, slope: 0.01, roughness: 0.01 }, x),
  'cleansing velocity': (x) => selfCleansingSlope(0.1, x, 0.01),
  'friction flow': (x) => hazenWilliamsSlope(x, 0.04, 140),
  'friction diameter': (x) => darcyWeisbachSlope(0.001, x),
  'curve head': (x) => pumpCurve([{ flow: 0, head: x }, { flow: 1, head: 0 }]),
  'duty static': (x) => dutyPoint(curve, { ...path, staticHead: x }),
  'duty length': (x) => dutyPoint(curve, { ...path, equivalentLength: x }),
  'weep head': (x) => weepHoleFlow(0.004, x),
  'line length': (x) => lineVolume(0.04, x),
  'basin': basinArea,
  'cycle inflow': (x) => cycleTime(0.1, 0.002, x),
  'run time': (x) => aloneRunTime(x, 0.002),
  'flotation level': (x) => flotation(basin, x),
  'pit voids': (x) => percolationPit({ area: 1, perimeter: 4, depth: 0.2, voids: x, bottomLevel: 0 }, 0.1, null, null),
  'soakaway rate': (x) => soakaway(100, [{ duration: 600, depth: 10 }], 10, x),
  'proof time': (x) => pumpDown([{ volume: 0.1, drop: 0.2, time: x, lineEmpty: false }], 0.002),
};

describe('bad numbers', () => {
  for (const [name, method] of Object.entries(methods)) {
    it(name, () => {
      expect([NaN, Infinity, -Infinity].map((x) => outcome(method, x))).toEqual(['problem', 'problem', 'problem']);
      for (const x of [0, -0, -1, 1e-300, 5e-324, 1e300, 1]) expect(outcome(method, x)).not.toBe('NaN');
    });
  }
});
