import type { DryWell, Outlet } from '../../document/document.ts';
import { FOOT, HOUR, INCH } from '../../common/constants.ts';
import type { FindingCode } from '../../findings/codes.ts';
import { answer, baseDocuments, part, site, sound, type FindingCase } from './case.ts';

type Codes<Prefix extends string> = Extract<FindingCode, `${Prefix}.${string}`>;
type Severity = FindingCase['severity'];

const emitter = baseDocuments.tern.system.parts.find((item): item is Outlet => item.id === 'O1' && item.kind === 'outlet')!;
const pit = emitter.pit!;
const outlet = (fields: Parameters<typeof part<'outlet'>>[3], severity: Severity, cured = true): FindingCase => part('outlet', 'tern', 'O1', fields, severity, cured);
const swale = (fields: Parameters<typeof part<'outlet'>>[3], severity: Severity, cured = true): FindingCase => part('outlet', 'ridge', 'O1', fields, severity, cured);
const soil = (base: 'tern' | 'dry', what: string, severity: Severity, fields: object, cured = false): FindingCase =>
  site(base, what, severity, (copy) => { Object.assign(copy.site.soil, fields); }, cured);
const well = (what: string, severity: Severity, fields: Partial<DryWell>, cured = true): FindingCase => site('dry', what, severity, (copy) => {
  copy.system.parts.forEach((item) => { if (item.kind === 'outlet') Object.assign(item.dryWell!, fields); });
}, cured);
const inchesAnHour = (rate: number): number => (rate * INCH) / HOUR;

export const outletCases: Readonly<Record<Codes<'N3' | 'N4' | 'N5' | 'N6' | 'N7' | 'N8' | 'N10'>, FindingCase>> = {
  'N3.ok': sound('tern'),
  'N3.small': outlet({ pit: { ...pit, area: 0.2 } }, 'caution'),
  'N4.ok': sound('tern'),
  'N4.nearFoundation': outlet({ distanceToFoundation: 7 * FOOT }, 'caution', false),
  'N4.atFoundation': outlet({ distanceToFoundation: 4 * FOOT }, 'stop', false),
  'N4.nearLotLine': outlet({ distanceToLotLine: 7 * FOOT }, 'caution', false),
  'N4.atLotLine': outlet({ distanceToLotLine: 4 * FOOT }, 'stop', false),
  'N5.ok': sound('tern'),
  'N5.inWaterTable': outlet({ pit: { ...pit, depth: 0.4, bottomLevel: 29.7244 } }, 'stop'),
  'N5.waterTableUnknown': soil('tern', 'high water table not known', 'caution', { seasonalHighWaterTable: null }),
  'N6.ok': soil('tern', 'soil takes 1 in/h', 'note', { infiltrationRate: inchesAnHour(1) }),
  'N6.untested': sound('tern'),
  'N6.slow': soil('tern', 'soil takes 0.2 in/h', 'caution', { infiltrationRate: inchesAnHour(0.2) }, true),
  'N6.tooSlow': soil('tern', 'soil takes 0.08 in/h', 'stop', { infiltrationRate: inchesAnHour(0.08) }),
  'N7.ok': sound('tern'),
  'N7.fast': outlet({ exitDiameter: 0.055 }, 'caution'),
  'N7.scours': outlet({ exitDiameter: 0.04 }, 'stop'),
  'N7.groundUntold': outlet({ exitDiameter: null, exitGround: null }, 'caution'),
  'N8.ok': sound('dry'),
  'N8.untested': soil('dry', 'soil not tested', 'caution', { infiltrationRate: null }),
  'N8.factorLow': well('design rate at three quarters of the test', 'stop', { infiltrationRate: inchesAnHour(1.5) }),
  'N8.soilSlow': { ...soil('dry', 'soil takes 0.4 in/h', 'stop', { infiltrationRate: inchesAnHour(0.4) }) },
  'N8.soilFast': soil('dry', 'soil takes 12 in/h', 'caution', { infiltrationRate: inchesAnHour(12) }),
  'N8.emptiesSlowly': well('design rate of 0.05 in/h', 'stop', { infiltrationRate: inchesAnHour(0.05) }),
  'N8.neverEmpties': well('no design rate', 'stop', { infiltrationRate: 0 }, false),
  'N8.nearWaterTable': well('bottom 18 in over the water table', 'stop', { bottomLevel: 28 + 18 * INCH }),
  'N8.waterTableUnknown': soil('dry', 'high water table not known', 'caution', { seasonalHighWaterTable: null }),
  'N8.nearFoundation': part('outlet', 'dry', 'O1', { distanceToFoundation: 9 * FOOT }, 'stop'),
  'N8.noOverflow': well('no way over', 'stop', { overflow: false }),
  'N8.overflowsToSill': well('overflow back to the low spot at the door', 'caution', { overflowsTo: 'L1' }, false),
  'N10.ok': swale({ ordinaryWater: 29.4 }, 'note', false),
  'N10.lowOverWater': swale({ ordinaryWater: 29.5 }, 'caution'),
  'N10.underWater': swale({ ordinaryWater: 29.65 }, 'stop'),
  'N10.belowGutter': swale({ outletKind: 'curb', groundLevel: 29.65 }, 'stop'),
};

export const questionCases: Readonly<Record<Codes<'O1' | 'O2' | 'O3' | 'O4' | 'O5' | 'O6' | 'O7' | 'O8' | 'O9' | 'O10'>, FindingCase>> = {
  'O1.ok': sound('tern'), 'O1.unknown': answer('outletTypeNamed', 'unknown'), 'O1.no': answer('outletTypeNamed', 'no'),
  'O2.ok': sound('tern'), 'O2.unknown': answer('ownerKnown', 'unknown'), 'O2.no': answer('ownerKnown', 'no'),
  'O3.ok': sound('tern'), 'O3.unknown': answer('permissionHeld', 'unknown'), 'O3.no': answer('permissionHeld', 'no'),
  'O4.ok': sound('tern'), 'O4.unknown': answer('notSanitarySewer', 'unknown'), 'O4.no': answer('notSanitarySewer', 'no'),
  'O5.ok': sound('tern'), 'O5.unknown': answer('notOntoNeighbour', 'unknown'), 'O5.no': answer('notOntoNeighbour', 'no'),
  'O6.ok': sound('tern'), 'O6.unknown': answer('associationAgrees', 'unknown'), 'O6.no': answer('associationAgrees', 'no'),
  'O7.ok': sound('tern'), 'O7.unknown': answer('rightOfWayPermit', 'unknown'), 'O7.no': answer('rightOfWayPermit', 'no'),
  'O8.ok': sound('tern'), 'O8.unknown': answer('noWetland', 'unknown'), 'O8.no': answer('noWetland', 'no'),
  'O9.ok': sound('tern'), 'O9.unknown': answer('clearOfSepticAndWell', 'unknown'), 'O9.no': answer('clearOfSepticAndWell', 'no'),
  'O10.ok': sound('tern'), 'O10.unknown': answer('noEasementConflict', 'unknown'), 'O10.no': answer('noEasementConflict', 'no'),
};
