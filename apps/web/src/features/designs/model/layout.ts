import type { Basin, Channel, DesignDocument, DischargeLine, LowSpot, Outlet, OutletQuestions, Part, Pipe, Pump, Sill } from '@yardfall/calc';

const FOOT = 0.3048;
const INCH = 0.0254;
const GPM = 231 * INCH * INCH * INCH / 60;
/** Fall of a first layout: 1/8 in per ft (common practice, no source). */
const FALL = 1 / 96;
const round = (metres: number) => Math.round(metres * 1e6) / 1e6;

const unanswered: OutletQuestions = {
  outletTypeNamed: 'yes', ownerKnown: 'unknown', permissionHeld: 'unknown', notSanitarySewer: 'yes', notOntoNeighbour: 'unknown', associationAgrees: 'unknown',
  rightOfWayPermit: 'unknown', noWetland: 'unknown', clearOfSepticAndWell: 'unknown', noEasementConflict: 'unknown',
};

interface Place {
  readonly lowSpot: LowSpot;
  readonly sill: Sill | null;
  readonly bottom: number;
  readonly grade: number;
}

/** A first layout to drag into shape: level channel, pipe, 30 x 48 basin, pump, check valve, weep hole, 1 1/2 in line and an emitter. Every figure is a start, not a design. */
export function pumpedSystem(document: DesignDocument): readonly Part[] {
  const place = placeOf(document);
  if (!place) return [];
  const channel = channelAt(place, 'P1');
  const pipe = pipeFrom(channel, 14 * FOOT, 'B1');
  const basin = basinAt(pipe.invertDown, place.grade);
  return [channel, pipe, basin, pumpIn(basin.id), { kind: 'checkValve', id: 'V1', name: 'Check valve', drainsTo: 'N1', equivalentLength: round(13.4 * FOOT), present: true },
    { kind: 'weepHole', id: 'W1', name: 'Weep hole', drainsTo: null, pump: 'M1', diameter: round((3 / 16) * INCH) }, lineTo('O1'), emitterAt(place)];
}

/** Channel and pipe to the candidate outlet that gravity reaches with the most to spare. */
export function gravitySystem(document: DesignDocument): readonly Part[] {
  const place = placeOf(document);
  const best = document.site.candidateOutlets.toSorted((a, b) => a.level + a.tailwater + a.distance * FALL - (b.level + b.tailwater + b.distance * FALL))[0];
  if (!place || !best) return [];
  const channel = channelAt(place, 'P1');
  const pipe: Pipe = { ...pipeFrom(channel, best.distance, 'O1'), invertDown: round(Math.max(best.level, channel.invertDown - best.distance * FALL)) };
  const outlet: Outlet = { ...emitterAt(place), name: best.name, outletKind: best.kind, level: pipe.invertDown, waterLevel: round(best.level + best.tailwater), openingHead: 0, groundLevel: best.level };
  return [channel, pipe, outlet];
}

function placeOf(document: DesignDocument): Place | null {
  const lowSpot = document.site.lowSpots[0];
  const bottom = lowSpot?.stageArea[0]?.level;
  if (!lowSpot || bottom === undefined) return null;
  return { lowSpot, sill: document.site.sills.find((sill) => sill.lowSpot === lowSpot.id) ?? null, bottom, grade: document.site.soil.gradeLevel };
}

function channelAt({ lowSpot, bottom }: Place, drainsTo: string): Channel {
  const grateLevel = round(bottom - INCH / 8);
  const invert = round(grateLevel - 0.127 - 0.0127);
  return {
    kind: 'channel', id: 'CH1', name: 'Channel drain', drainsTo, lowSpot: lowSpot.id, length: round(18 * FOOT), width: 0.1016, depth: 0.127, shape: 'rectangular', bottomWidth: 0.1016,
    steps: [], invertUp: invert, invertDown: invert, roughness: 0.011, grateLevel, grate: { openAreaRatio: 0.35, slotWidth: round((5 / 16) * INCH), locked: true, loadClass: 'foot', clogging: 0.5 },
    outletSides: 1, outletDiameter: 0.1016, surround: 0.1016, use: 'foot',
  };
}

function pipeFrom(channel: Channel, length: number, drainsTo: string): Pipe {
  const invertUp = round(channel.invertDown - 0.00127);
  return {
    kind: 'pipe', id: 'P1', name: 'Gravity pipe', drainsTo, diameter: 0.1016, length: round(length), invertUp, invertDown: round(invertUp - length * FALL), roughness: 0.01,
    material: 'smoothSolid', joints: 'glued', coverMin: round(6.2 * INCH), underWheels: false, bends90: 0, bends45: 1, longSweep: true, cleanouts: 1,
  };
}

function basinAt(inlet: number, grade: number): Basin {
  const floor = round(Math.min(grade - 4 * FOOT, inlet - 3 * FOOT));
  const off = round(floor + 6 * INCH);
  const on = round(off + 0.9 * FOOT);
  return {
    kind: 'basin', id: 'B1', name: 'Pump basin', drainsTo: null, diameter: round(30 * INCH), floorLevel: floor, rimLevel: round(grade), inletInvert: inlet, offLevel: off, onLevel: on,
    alarmLevel: round(on + 4 * INCH), marks: [], wall: 'solid', floatClearance: round(4 * INCH), floatKind: 'vertical', collarVolume: 0.48, emptyMass: 20, lidFixed: true,
  };
}

/** Points of an invented pump, typed again from the datasheet of the real one. */
function pumpIn(basin: string): Pump {
  const points = [[0, 18], [19, 15], [34, 10], [43, 5], [50, 0.5]] as const;
  return {
    kind: 'pump', id: 'M1', name: 'Sump pump', drainsTo: 'V1', basin, curveName: 'A', curve: points.map(([gpm, feet]) => ({ flow: gpm * GPM, head: feet * FOOT })),
    solids: 0.0127, minSubmergence: round(4 * INCH), role: 'duty', startLevel: null, power: 'mains', energy: null, inputPower: null,
  };
}

function lineTo(drainsTo: string): DischargeLine {
  return {
    kind: 'dischargeLine', id: 'N1', name: 'Discharge line', drainsTo, innerDiameter: 0.040894, nominal: '1 1/2 in', length: round(112 * FOOT), hazenWilliamsC: 150,
    fittings: [{ kind: 'bend90', count: 3, equivalentLength: round(4 * FOOT) }, { kind: 'bend45', count: 2, equivalentLength: round(2.1 * FOOT) }], highPoint: null, lowestSag: null, wallRoughness: 1.5e-6, coverMin: FOOT,
  };
}

function emitterAt({ lowSpot }: Place): Outlet {
  const lid = round(lowSpot.rimLevel - 0.18 * FOOT);
  return {
    kind: 'outlet', id: 'O1', name: 'Emitter on the lawn', drainsTo: null, outletKind: 'emitter', level: lid, waterLevel: round(lid + 0.1 * FOOT), openingHead: round(0.3 * FOOT),
    distanceToFoundation: round(60 * FOOT), distanceToLotLine: round(12 * FOOT), insideCatchment: false, groundLevel: lid, groundFallsAway: 0.015, pit: null, dryWell: null,
    exitDiameter: round(4 * INCH), exitGround: 'grass', ordinaryWater: null, returns: null, questions: unanswered,
  };
}
