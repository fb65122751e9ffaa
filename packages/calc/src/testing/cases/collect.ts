import type { FindingCode } from '../../findings/codes.ts';
import { INCH } from '../../common/constants.ts';
import { baseDocuments, part, site, sound, type FindingCase } from './case.ts';

type Codes<Prefix extends string> = Extract<FindingCode, `${Prefix}.${string}`>;

const tern = baseDocuments.tern;
const { grate } = tern.system.parts.find((item) => item.kind === 'channel')!;
const channel = (fields: Parameters<typeof part<'channel'>>[3], severity: FindingCase['severity'], cured = true): FindingCase => part('channel', 'tern', 'CH1', fields, severity, cured);
const outlet = (fields: Parameters<typeof part<'outlet'>>[3], severity: FindingCase['severity'], cured = false): FindingCase => part('outlet', 'tern', 'O1', fields, severity, cured);
const box = (fields: Parameters<typeof part<'catchBasin'>>[3], severity: FindingCase['severity'], cured = true): FindingCase => part('catchBasin', 'lawn', 'CB1', fields, severity, cured);
const underTrees = (item: FindingCase): FindingCase => ({ ...item, what: `${item.what}, under trees`, document: { ...item.document, construction: { ...item.document.construction, treesNear: true } } });

export const collectCases: Readonly<Record<Codes<'D1' | 'D2' | 'I1' | 'I2' | 'I3' | 'I4' | 'I5' | 'C1' | 'C2' | 'C3' | 'C4' | 'C5'>, FindingCase>> = {
  'D1.ok': sound('ridge'),
  'D1.insideCatchment': outlet({ insideCatchment: true }, 'stop'),
  'D1.lidHigh': { ...sound('tern'), severity: 'caution' },
  'D1.aboveRim': outlet({ level: 30.48, waterLevel: 30.49 }, 'stop'),
  'D1.groundFlat': outlet({ groundFallsAway: 0.005 }, 'caution', true),
  'D1.groundFallsBack': outlet({ groundFallsAway: -0.02 }, 'stop', true),
  'D2.ok': sound('tern'),
  'D2.tight': part('leader', 'tern', 'D1', { diameter: 0.0575 }, 'caution', true),
  'D2.overflows': part('gutter', 'tern', 'G1', { width: 0.08, depth: 0.05 }, 'stop', true),
  'D2.lineOk': sound('tern'),
  'D2.lineTight': part('roofLine', 'tern', 'R1', { unsealedJointLevel: 30.56 }, 'caution', true),
  'D2.lineSpills': part('roofLine', 'tern', 'R1', { diameter: 0.0508, unsealedJointLevel: 30.6 }, 'stop', true),
  'D2.lineStaysFull': sound('tern'),
  'D2.areasOverLot': site('tern', 'a lot smaller than what drains here', 'caution', (copy) => { copy.site.lotArea = 150; }),
  'I1.ok': sound('tern'),
  'I1.tight': box({ gratePerimeter: 0.675 }, 'caution'),
  'I1.short': channel({ grate: { ...grate, openAreaRatio: 0.02 } }, 'stop'),
  'I1.closed': channel({ grate: { ...grate, openAreaRatio: 0 } }, 'stop'),
  'I2.ok': sound('tern'),
  'I2.heel': channel({ grate: { ...grate, slotWidth: 0.01 } }, 'note', false),
  'I2.wide': channel({ grate: { ...grate, slotWidth: 0.02 } }, 'stop'),
  'I3.ok': sound('tern'),
  'I3.weak': channel({ use: 'car', surround: 6 * INCH }, 'stop'),
  'I4.ok': underTrees(sound('lawn')),
  'I4.sumpSmall': underTrees(box({ sumpDepth: 4 * INCH }, 'caution')),
  'I4.sumpMissing': underTrees(box({ sumpDepth: INCH }, 'stop')),
  'I4.flushChannel': sound('tern'),
  'I5.ok': sound('tern'),
  'I5.loose': channel({ grate: { ...grate, locked: false } }, 'stop'),
  'C1.ok': sound('ridge'),
  'C1.nearFull': { ...sound('tern'), severity: 'caution', cured: true },
  'C1.overflows': channel({ depth: 0.095, outletDiameter: null }, 'stop'),
  'C2.ok': channel({ invertUp: 30.23 }, 'note', false),
  'C2.level': sound('tern'),
  'C2.backFall': channel({ invertUp: 30.19 }, 'caution'),
  'C3.ok': sound('tern'),
  'C3.deep': part('channel', 'ridge', 'CH1', { invertUp: 30.33 }, 'caution', true),
  'C3.tooDeep': site('tern', 'floor falls 13 in over the channel', 'stop', (copy) => {
    const [ch] = copy.system.parts.filter((item) => item.kind === 'channel');
    Object.assign(ch!, { invertUp: 30.22, invertDown: 29.88 });
    Object.assign(copy.system.parts.find(({ id }) => id === 'P1')!, { invertUp: 29.88, invertDown: 29.8355 });
    Object.assign(copy.system.parts.find(({ id }) => id === 'B1')!, { inletInvert: 29.8355 });
  }, true),
  'C3.pipeAbove': channel({ invertUp: 30.2, invertDown: 30.2 }, 'stop'),
  'C4.ok': sound('tern'),
  'C4.tight': channel({ outletDiameter: 0.0762 }, 'caution'),
  'C4.short': channel({ outletDiameter: 0.06 }, 'stop'),
  'C5.ok': sound('tern'),
  'C5.thin': channel({ surround: 3.5 * INCH }, 'caution'),
  'C5.tooThin': channel({ surround: 2 * INCH }, 'stop'),
};

