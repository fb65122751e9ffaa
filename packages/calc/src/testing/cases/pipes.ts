import type { FindingCode } from '../../findings/codes.ts';
import { FOOT, INCH } from '../../common/constants.ts';
import { part, site, sound, type Change, type FindingCase } from './case.ts';

type Codes<Prefix extends string> = Extract<FindingCode, `${Prefix}.${string}`>;

const pipe = (fields: Parameters<typeof part<'pipe'>>[3], severity: FindingCase['severity'], cured = true): FindingCase => part('pipe', 'tern', 'P1', fields, severity, cured);
const long = (fields: Parameters<typeof part<'pipe'>>[3], severity: FindingCase['severity'], cured = true): FindingCase => part('pipe', 'ridge', 'P1', fields, severity, cured);
const works = (what: string, severity: FindingCase['severity'], change: Change): FindingCase => site('tern', what, severity, change);

export const pipeCases: Readonly<Record<Codes<'G1' | 'G2' | 'G3' | 'G4' | 'G5' | 'G6' | 'G7' | 'G8' | 'G9'>, FindingCase>> = {
  'G1.ok': sound('tern'),
  'G1.small': pipe({ invertDown: 30.19 }, 'caution'),
  'G1.tooFlat': pipe({ invertDown: 30.215 }, 'stop'),
  'G1.flatSmall': part('pipe', 'lawn', 'P1', { diameter: 0.0762, invertUp: 30.25, invertDown: 30.05 }, 'stop', true),
  'G1.flat': pipe({ invertDown: 30.21965 }, 'stop'),
  'G1.backFall': pipe({ invertDown: 30.23 }, 'stop'),
  'G2.ok': sound('tern'),
  'G2.nearFull': part('pipe', 'ridge', 'P1', { roughness: 0.0135, diameter: 0.1 }, 'caution', true),
  'G2.tooSmall': long({ diameter: 0.0762 }, 'stop'),
  'G3.ok': sound('tern'),
  'G3.slow': site('lawn', 'little water in a rough pipe at 1.1 %', 'caution', (copy) => {
    copy.site.catchments[0]!.area = 5;
    Object.assign(copy.system.parts.find(({ id }) => id === 'P1')!, { roughness: 0.02, invertDown: 30.2514 - 0.011 * 25.908 });
  }, true),
  'G3.fast': long({ invertUp: 30.2514, invertDown: 29.7, length: 2 }, 'caution', false),
  'G4.ok': sound('tern'),
  'G4.shallow': pipe({ coverMin: 5 * INCH }, 'caution'),
  'G4.tooShallow': pipe({ coverMin: 2 * INCH }, 'stop'),
  'G4.underWheels': long({ coverMin: 10 * INCH, underWheels: true }, 'stop'),
  'G5.ok': sound('tern'),
  'G5.few': pipe({ cleanouts: 0 }, 'caution'),
  'G5.deadEnd': site('lawn', 'pipe begins blind and without a cleanout', 'stop', (copy) => {
    copy.system.parts.push({ ...copy.system.parts.find((item) => item.kind === 'pipe')!, id: 'P9', name: 'Blind pipe', drainsTo: 'P1', cleanouts: 0, invertDown: 30.2514, invertUp: 30.6, length: 30 * FOOT });
  }, true),
  'G6.ok': sound('tern'),
  'G6.underFooting': works('trench under the footing plane', 'refer', (copy) => { copy.construction.trenchNearFooting = true; }),
  'G6.termiteZone': works('work within a foot of the foundation', 'caution', (copy) => { copy.construction.foundationWithin1ft = true; }),
  'G7.ok': sound('tern'),
  'G7.sweeps': pipe({ bends90: 1, cleanouts: 2 }, 'note', false),
  'G7.manySweeps': pipe({ bends90: 2, cleanouts: 3 }, 'caution'),
  'G7.hardBend': pipe({ bends90: 1, longSweep: false, cleanouts: 2 }, 'stop'),
  'G8.ok': sound('tern'),
  'G8.corrugated': long({ material: 'corrugatedSolid', roughness: 0.02, diameter: 0.1524 }, 'caution'),
  'G8.corrugatedFlat': pipe({ material: 'corrugatedSolid', roughness: 0.02, diameter: 0.1524, coverMin: 0.35 }, 'stop'),
  'G8.perforated': pipe({ material: 'perforated', coverMin: 0.35 }, 'stop'),
  'G9.ok': sound('tern'),
  'G9.loose': long({ joints: 'pushFit', coverMin: 0.35 }, 'caution'),
  'G9.roots': pipe({ joints: 'pushFit', coverMin: 0.35 }, 'stop'),
};
