import type { FindingCode } from '../../findings/codes.ts';
import { INCH, MINUTE } from '../../common/constants.ts';
import type { Results } from '../../results/results.ts';
import { part, routedAs, site, sound, type FindingCase } from './case.ts';

type Codes<Prefix extends string> = Extract<FindingCode, `${Prefix}.${string}`>;
type Severity = FindingCase['severity'];

const basin = (fields: Parameters<typeof part<'basin'>>[3], severity: Severity, cured = true): FindingCase => part('basin', 'tern', 'B1', fields, severity, cured);
const line = (fields: Parameters<typeof part<'dischargeLine'>>[3], severity: Severity, cured = true): FindingCase => part('dischargeLine', 'tern', 'N1', fields, severity, cured);
const pump = (fields: Parameters<typeof part<'pump'>>[3], severity: Severity, cured = false): FindingCase => part('pump', 'tern', 'M1', fields, severity, cured);
const supply = (what: string, severity: Severity, fields: object, cured = true): FindingCase =>
  site('tern', what, severity, (copy) => { Object.assign(copy.construction.electrical!, fields); }, cured);
const ground = (what: string, severity: Severity, inflow: number, cured: boolean): FindingCase => site('under', what, severity, (copy) => {
  Object.assign(copy.system.parts.find(({ kind }) => kind === 'underdrain')!, { inflowPerLength: inflow });
}, cured);
const outage = (minutes: number) => (results: Results): Results => ({ ...results, outage: { ...results.outage!, longestSafe: minutes * MINUTE } });
const soil = (what: string, severity: Severity, fields: object): FindingCase => site('tern', what, severity, (copy) => { Object.assign(copy.site.soil, fields); });

export const basinCases: Readonly<Record<Codes<'B1' | 'B2' | 'B3' | 'B4' | 'B5' | 'B6' | 'B7' | 'B8' | 'B9' | 'B10'>, FindingCase>> = {
  'B1.ok': sound('tern'),
  'B1.manyStarts': basin({ diameter: 24 * INCH }, 'caution'),
  'B1.tooManyStarts': basin({ diameter: 18 * INCH }, 'stop'),
  'B2.ok': sound('tern'),
  'B2.shortRun': basin({ diameter: 24 * INCH }, 'caution'),
  'B2.tooShortRun': basin({ diameter: 18 * INCH }, 'stop'),
  'B3.ok': sound('tern'),
  'B3.sucksAir': basin({ offLevel: 29.3 }, 'stop'),
  'B4.ok': sound('tern'),
  'B4.nearInlet': basin({ onLevel: 30.15, alarmLevel: 30.17 }, 'caution'),
  'B4.aboveInlet': basin({ onLevel: 30.2, alarmLevel: 30.25 }, 'stop'),
  'B5.ok': sound('tern'),
  'B5.unusual': basin({ alarmLevel: 29.9 }, 'caution'),
  'B5.aboveInlet': basin({ alarmLevel: 30.3 }, 'stop'),
  'B6.ok': sound('tern'),
  'B6.close': basin({ floatClearance: 2 * INCH }, 'caution'),
  'B6.touches': basin({ floatClearance: 0.5 * INCH }, 'stop'),
  'B7.ok': sound('tern'),
  'B7.waterTableUnknown': soil('high water table not known', 'caution', { seasonalHighWaterTable: null }),
  'B7.lightAtWaterTable': site('tern', 'water table at grade, collar for 1.15', 'caution', (copy) => {
    copy.site.soil.seasonalHighWaterTable = copy.site.soil.gradeLevel;
    Object.assign(copy.system.parts.find(({ id }) => id === 'B1')!, { collarVolume: 0.442 });
  }, true),
  'B7.floatsAtWaterTable': basin({ collarVolume: 0 }, 'stop'),
  'B7.lightAtGrade': basin({ collarVolume: 0.405 }, 'caution'),
  'B7.floatsAtGrade': basin({ collarVolume: 0.18 }, 'stop'),
  'B8.ok': sound('tern'),
  'B8.perforatedWet': basin({ wall: 'perforated' }, 'stop'),
  'B9.ok': sound('tern'),
  'B9.loose': basin({ lidFixed: false }, 'stop'),
  'B10.ok': sound('tern'),
  'B10.siltRoomSmall': basin({ offLevel: 29.3 }, 'caution'),
};

export const pumpCases: Readonly<Record<Codes<'P1' | 'P3' | 'P4' | 'P5' | 'P6' | 'P7' | 'P8' | 'N1' | 'N2' | 'N9' | 'N11'>, FindingCase>> = {
  'P1.ok': sound('tern'),
  'P1.endOfCurve': line({ innerDiameter: 0.052502, length: 20, fittings: [] }, 'caution'),
  'P1.noFlow': part('outlet', 'tern', 'O1', { waterLevel: 36, level: 36 }, 'stop'),
  'P1.beyondCurve': site('tern', 'a wide short line that hardly lifts', 'stop', (copy) => {
    Object.assign(copy.system.parts.find(({ id }) => id === 'O1')!, { level: 29.45, waterLevel: 29.45, openingHead: 0 });
    Object.assign(copy.system.parts.find(({ id }) => id === 'N1')!, { innerDiameter: 0.077927, length: 4, fittings: [] });
  }),
  'P3.ok': sound('under'),
  'P3.tight': ground('ground water of 23 gpm', 'caution', 0.00145 / 6.096, true),
  'P3.short': ground('ground water of 32 gpm', 'stop', 0.002 / 6.096, false),
  'P4.ok': sound('tern'),
  'P4.slow': line({ innerDiameter: 0.08 }, 'stop'),
  'P4.fast': line({ innerDiameter: 0.036 }, 'caution'),
  'P4.tooFast': line({ innerDiameter: 0.0266, length: 3, fittings: [] }, 'stop', true),
  'P5.ok': sound('tern'),
  'P5.highLift': part('outlet', 'tern', 'O1', { waterLevel: 33.7 }, 'caution'),
  'P5.tooHigh': part('outlet', 'tern', 'O1', { waterLevel: 34.1 }, 'stop'),
  'P6.ok': sound('tern'),
  'P6.basket': pump({ solids: 0.009 }, 'caution'),
  'P6.tooSmall': site('tern', 'slots of 3/16 in and a pump for 1/5 in', 'stop', (copy) => {
    copy.system.parts.forEach((item) => { if (item.kind === 'channel') item.grate.slotWidth = 0.0048; });
    Object.assign(copy.system.parts.find(({ id }) => id === 'M1')!, { solids: 0.005 });
  }),
  'P6.smallerThanSlot': pump({ solids: 0.0075 }, 'stop', true),
  'P7.ok': sound('tern'),
  'P7.tetherInSmallBasin': basin({ diameter: 0.4, floatKind: 'tether' }, 'stop'),
  'P8.ok': site('tern', 'a standby pump beside it', 'note', (copy) => {
    copy.system.parts.push({ ...copy.system.parts.find((item) => item.kind === 'pump')!, id: 'M2', name: 'Standby pump', role: 'standby' });
  }),
  'P8.onePump': sound('tern'),
  'P8.secondWanted': routedAs('5 minutes without power flood', 'caution', outage(5)),
  'N1.ok': site('tern', 'no check valve on a line of 30 ft', 'note', (copy) => {
    Object.assign(copy.system.parts.find(({ id }) => id === 'V1')!, { present: false });
    Object.assign(copy.system.parts.find(({ id }) => id === 'N1')!, { length: 9 });
  }),
  'N1.runBack': part('checkValve', 'tern', 'V1', { present: false }, 'caution', true),
  'N1.runBackLarge': site('tern', 'no check valve on a 2 in line of 130 ft', 'stop', (copy) => {
    Object.assign(copy.system.parts.find(({ id }) => id === 'V1')!, { present: false });
    Object.assign(copy.system.parts.find(({ id }) => id === 'N1')!, { innerDiameter: 0.052502, length: 40 });
  }, true),
  'N2.ok': sound('tern'),
  'N2.large': part('weepHole', 'tern', 'W1', { diameter: 0.006 }, 'caution', true),
  'N2.tooLarge': part('weepHole', 'tern', 'W1', { diameter: 0.01 }, 'stop', true),
  'N2.missing': site('tern', 'no weep hole', 'caution', (copy) => { copy.system.parts = copy.system.parts.filter(({ kind }) => kind !== 'weepHole'); }),
  'N9.ok': sound('tern'),
  'N9.drains': site('tern', 'frost to 2 ft, no check valve', 'note', (copy) => {
    copy.site.soil.frostDepth = 0.6;
    Object.assign(copy.system.parts.find(({ id }) => id === 'V1')!, { present: false });
  }),
  'N9.holdsWater': { ...soil('frost to 2 ft', 'caution', { frostDepth: 0.6 }), cured: true },
  'N9.unknown': soil('frost depth not known', 'note', { frostDepth: null }),
  'N11.ok': sound('tern'),
  'N11.shallow': line({ coverMin: 9 * INCH }, 'caution'),
  'N11.tooShallow': line({ coverMin: 5 * INCH }, 'stop'),
};

export const electricalCases: Readonly<Record<Codes<'E1' | 'E2' | 'E3' | 'E4' | 'E5'>, FindingCase>> = {
  'E1.ok': sound('tern'),
  'E1.missing': site('tern', 'no power', 'stop', (copy) => { copy.construction.electrical = null; }),
  'E1.extensionCord': supply('extension cord', 'stop', { extensionCord: true }),
  'E1.noGfci': supply('no ground-fault protection', 'stop', { gfci: false }),
  'E1.shared': supply('shared circuit', 'caution', { dedicatedCircuit: false }),
  'E1.floodable': supply('receptacle at the low spot', 'stop', { receptacleLevel: 30.4 }),
  'E1.poolBonding': site('tern', 'pool within 10 ft', 'caution', (copy) => { copy.construction.poolWithin3m = true; }),
  'E2.ok': sound('tern'),
  'E2.drop': supply('wire of 150 ft', 'caution', { runLength: 45 }),
  'E2.dropLarge': supply('wire of 300 ft', 'stop', { runLength: 90 }),
  'E3.ok': sound('tern'),
  'E3.burial': supply('burial not told', 'note', { burial: null }, false),
  'E3.shallow': supply('direct cable 18 in down', 'stop', { burial: { method: 'direct', depth: 18 * INCH } }),
  'E4.ok': sound('tern'),
  'E4.sameCircuit': supply('alarm on the pump\'s circuit', 'caution', { alarm: 'sameCircuitBattery' }),
  'E4.missing': supply('no alarm', 'stop', { alarm: 'none' }),
  'E5.ok': routedAs('45 minutes without power are safe', 'note', outage(45)),
  'E5.long': routedAs('four hours without power are safe', 'note', outage(240)),
  'E5.short': routedAs('20 minutes without power are safe', 'caution', outage(20), true),
  'E5.backed': { ...supply('a battery, and 5 minutes without power are safe', 'caution', { backup: 'battery' }, false), routed: outage(5) },
  'E5.tooShort': routedAs('9 minutes without power are safe', 'stop', outage(9), true),
};

