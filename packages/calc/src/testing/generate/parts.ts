import type { Answer, Basin, CatchBasin, Channel, Cleanout, LowSpot, Outlet, OutletQuestions, Pipe, Swale, Underdrain } from '../../document/document.ts';
import { rounded } from './draw.ts';
import type { Builder } from './system.ts';

/** Sold diameters: 3, 4 and 6 in. */
const diameters = [0.0762, 0.1016, 0.1524];

export function channel(build: Builder, spot: LowSpot): Channel {
  const { draw } = build;
  const grateLevel = rounded(spot.stageArea[0]!.level - draw.between(0, 0.006));
  const width = draw.pick([0.1016, 0.127, 0.2]);
  const depth = draw.between(0.075, 0.22);
  const invertUp = rounded(grateLevel - draw.between(0.02, 0.03) - depth);
  const length = draw.between(1, 9);
  const fall = draw.chance(0.4) ? 0 : rounded(length * draw.between(0.001, 0.01));
  const shape = draw.pick(['rectangular', 'rectangular', 'trapezoidal', 'roundBottomed'] as const);
  return build.add({
    kind: 'channel', id: build.id('CH'), name: 'Channel', drainsTo: null, lowSpot: spot.id, length, width, depth, shape,
    bottomWidth: shape === 'trapezoidal' ? rounded(width * 0.7) : width, steps: fall > 0.005 && draw.chance(0.3) ? [{ at: rounded(length / 2), drop: rounded(fall / 2) }] : [],
    invertUp, invertDown: rounded(invertUp - fall), roughness: draw.between(0.009, 0.014), grateLevel,
    grate: { openAreaRatio: draw.between(0.2, 0.5), slotWidth: draw.between(0.005, 0.013), locked: draw.chance(0.8), loadClass: draw.pick(['foot', 'car', 'truck'] as const), clogging: draw.between(0.3, 1) },
    outletSides: draw.pick([1, 1, 2] as const), outletDiameter: draw.chance(0.8) ? draw.pick(diameters) : null, surround: draw.between(0.075, 0.2), use: draw.pick(['foot', 'car'] as const),
  });
}

export function catchBasin(build: Builder, spot: LowSpot): CatchBasin {
  const { draw } = build;
  const side = draw.pick([0.23, 0.3, 0.45]);
  const grateLevel = rounded(spot.stageArea[0]!.level - draw.between(0, 0.006));
  return build.add({
    kind: 'catchBasin', id: build.id('CB'), name: 'Catch basin', drainsTo: null, lowSpot: spot.id, grateLevel, gratePerimeter: rounded(4 * side),
    grateOpenArea: rounded(side * side * draw.between(0.25, 0.5)), clogging: draw.between(0.3, 1), invertOut: rounded(grateLevel - draw.between(0.15, 0.4)), sumpDepth: draw.between(0, 0.2),
  });
}

export function pipe(build: Builder, level: number): Pipe {
  const { draw } = build;
  const length = draw.between(1.5, 20);
  const invertUp = rounded(level - draw.between(0.001, 0.01));
  const material = draw.pick(['smoothSolid', 'smoothSolid', 'smoothSolid', 'corrugatedSolid', 'perforated'] as const);
  return build.add({
    kind: 'pipe', id: build.id('P'), name: 'Pipe', drainsTo: null, diameter: draw.pick(diameters), length, invertUp, invertDown: rounded(invertUp - length * draw.between(0.003, 0.03)),
    roughness: material === 'corrugatedSolid' ? draw.between(0.015, 0.022) : draw.between(0.009, 0.013), material, joints: draw.pick(['glued', 'gasketed', 'pushFit'] as const),
    coverMin: draw.between(0.1, 0.6), underWheels: draw.chance(0.15), bends90: draw.whole(0, 2), bends45: draw.whole(0, 2), longSweep: draw.chance(0.7), cleanouts: draw.whole(0, 2),
  });
}

export function cleanout(build: Builder): Cleanout {
  return build.add({ kind: 'cleanout', id: build.id('CO'), name: 'Cleanout', drainsTo: null, diameter: build.draw.pick(diameters) });
}

export function swale(build: Builder): Swale {
  const { draw } = build;
  return build.add({
    kind: 'swale', id: build.id('SW'), name: 'Swale', drainsTo: null, length: draw.between(3, 25), slope: draw.between(0.005, 0.04), sideSlope: draw.between(2, 5),
    depth: draw.between(0.1, 0.3), roughness: draw.between(0.03, 0.2),
  });
}

export function underdrain(build: Builder, level: number, drainsTo: string): Underdrain {
  const { draw } = build;
  const length = draw.between(4, 20);
  const invertDown = rounded(level + draw.between(0.005, 0.05));
  const conductivity = draw.between(1e-6, 3e-5);
  const seepage = draw.pick([
    null,
    { method: 'interceptor', conductivity, fromTexture: false, gradient: draw.between(0.01, 0.1), depth: draw.between(0.2, 0.8) } as const,
    { method: 'relief', conductivity, fromTexture: true, waterAbove: draw.between(0.1, 0.5), barrierBelow: draw.between(0, 1.5), reach: draw.between(2, 10), sides: draw.pick([1, 2] as const) } as const,
  ]);
  return build.add({
    kind: 'underdrain', id: build.id('UD'), name: 'Underdrain', drainsTo, diameter: 0.1016, length, invertUp: rounded(invertDown + length * 0.005), invertDown,
    inflowPerLength: draw.between(0, 2e-5), seepage,
  });
}

export function basin(build: Builder, inlet: number): Basin {
  const { draw, ground } = build;
  const inletInvert = rounded(inlet - draw.between(0.001, 0.02));
  const onLevel = rounded(inletInvert - draw.between(0.03, 0.25));
  const offLevel = rounded(onLevel - draw.between(0.1, 0.5));
  const floorLevel = rounded(offLevel - draw.between(0.05, 0.2));
  const diameter = draw.pick([0.4572, 0.6096, 0.762, 0.9144]);
  const rimLevel = rounded(Math.max(ground.floor - draw.between(0, 0.05), inletInvert + 0.2));
  const barrel = 0.7 * diameter * diameter;
  return build.add({
    kind: 'basin', id: build.id('B'), name: 'Pump basin', drainsTo: null, diameter, floorLevel, rimLevel, inletInvert, offLevel, onLevel,
    alarmLevel: rounded(onLevel + draw.between(0.02, 0.12)),
    marks: draw.chance(0.2) ? [0, 0.5, 1].map((share) => ({ level: rounded(floorLevel + share * (rimLevel - floorLevel)), volume: rounded(barrel * share * (rimLevel - floorLevel) + 0.001 * share) })) : [],
    wall: draw.chance(0.85) ? 'solid' : 'perforated', floatClearance: draw.between(0.02, 0.15), floatKind: draw.pick(['vertical', 'electronic', 'tether'] as const),
    collarVolume: draw.chance(0.5) ? draw.between(0.05, 0.5) : 0, emptyMass: draw.between(10, 60), lidFixed: draw.chance(0.8),
  });
}

const answers: readonly Answer[] = ['yes', 'yes', 'yes', 'yes', 'notApplicable', 'unknown', 'no'];

function questions(build: Builder): OutletQuestions {
  const answer = (): Answer => build.draw.pick(answers);
  return {
    outletTypeNamed: answer(), ownerKnown: answer(), permissionHeld: answer(), notSanitarySewer: answer(), notOntoNeighbour: answer(), associationAgrees: answer(),
    rightOfWayPermit: answer(), noWetland: answer(), clearOfSepticAndWell: answer(), noEasementConflict: answer(),
  };
}

/** An outlet for a pipe that arrives at a level, for a pumped line (the level is its lid), or a dry well under the pipe. */
export function outlet(build: Builder, level: number, use: 'gravity' | 'line' | 'dryWell'): Outlet {
  const { draw, limits, ground } = build;
  const spot = draw.pick(ground.spots);
  const back = limits.recirculation && draw.chance(0.15);
  const area = draw.between(1, 8);
  const pit = use === 'line' && draw.chance(0.5) ? { area: draw.between(0.3, 1.5), depth: draw.between(0.15, 0.4), voids: 0.4, bottomLevel: rounded(level - draw.between(0.4, 0.7)) } : null;
  const kind = use === 'dryWell' ? 'dryWell' : use === 'line' ? draw.pick(['emitter', 'curb', 'daylight'] as const) : draw.pick(['daylight', 'ditch', 'curb', 'stormConnection'] as const);
  return build.add<Outlet>({
    kind: 'outlet', id: build.id('O'), name: 'Outlet', drainsTo: null, outletKind: pit === null ? kind : 'percolationTee', level,
    waterLevel: limits.recirculation && draw.chance(0.5) ? rounded(level + draw.between(0, 0.06)) : level, openingHead: use === 'line' && draw.chance(0.5) ? draw.between(0, 0.1) : 0,
    distanceToFoundation: draw.between(1, 30), distanceToLotLine: draw.between(0.5, 10), insideCatchment: back, groundLevel: rounded(level + draw.between(0, 0.05)),
    groundFallsAway: draw.between(-0.01, 0.05), pit, exitDiameter: draw.chance(0.3) ? draw.pick(diameters) : null,
    exitGround: draw.pick([null, 'grass', 'denseGrass', 'stone'] as const), ordinaryWater: draw.chance(0.2) ? rounded(level - draw.between(0, 0.2)) : null,
    dryWell: use !== 'dryWell' ? null : {
      area, perimeter: rounded(4 * Math.sqrt(area)), depth: draw.between(0.4, 1.2), voids: draw.between(0.3, 0.95), bottomLevel: rounded(level - draw.between(0.5, 1.3)),
      infiltrationRate: draw.between(1e-6, 3e-5), overflow: back || draw.chance(0.7), overflowsTo: back ? spot.id : null,
    },
    returns: back && use !== 'dryWell' ? { lowSpot: spot.id, share: draw.between(0.05, 0.9) } : null, questions: questions(build),
  });
}
