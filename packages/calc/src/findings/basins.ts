import { INCH } from '../common/constants.ts';
import { collarFor } from '../basin/flotation.ts';
import type { Basin } from '../document/document.ts';
import type { Finding } from '../results/results.ts';
import { partsOf } from '../routing/pathParts.ts';
import { graded, setPart, stated, type CheckInput } from './finding.ts';
import { limits } from './limits.ts';

const pumped = ({ document }: CheckInput, basin: Basin): boolean => partsOf(document, 'pump').some((pump) => pump.basin === basin.id);
const resultOf = ({ results }: CheckInput, basin: Basin) => results.basins.find((item) => item.part === basin.id)!;

/** Each check of a basin that has a pump. */
function forPumped(input: CheckInput, check: (basin: Basin) => Finding[]): Finding[] {
  return partsOf(input.document, 'basin').filter((basin) => pumped(input, basin)).flatMap(check);
}

/** B1, B2: starts per hour at the worst inflow, and run time alone. The remedy lowers nothing: it widens the basin. */
export function cycling(input: CheckInput): Finding[] {
  return forPumped(input, (basin) => {
    const result = resultOf(input, basin);
    const wider = basin.diameter + 6 * INCH;
    const remedy = setPart(input.document, basin.id, 'diameter', wider, 'remedy.widerBasin', { basin: basin.name, diameter: wider });
    const params = { basin: basin.name, starts: result.worstStartsPerHour, volume: result.workingVolume, runTime: result.aloneRunTime };
    return [
      ...graded('B1', 'B1', result.worstStartsPerHour, basin.id, { pass: 'ok', warn: 'manyStarts', fail: 'tooManyStarts' }, params, remedy),
      ...graded('B2', 'B2', result.aloneRunTime, basin.id, { pass: 'ok', warn: 'shortRun', fail: 'tooShortRun' }, params, remedy),
    ];
  });
}

/** B3, B10: off level over the floor, over the pump's own need, and room for silt. */
export function offLevel(input: CheckInput): Finding[] {
  const { document } = input;
  return forPumped(input, (basin) => {
    const above = basin.offLevel - basin.floorLevel;
    const need = partsOf(document, 'pump').filter((pump) => pump.basin === basin.id).reduce((most, pump) => Math.max(most, pump.minSubmergence), limits.B3.pass);
    const params = { basin: basin.name, above, need };
    const remedy = setPart(document, basin.id, 'offLevel', basin.floorLevel + need, 'remedy.raiseOff', { basin: basin.name, above: need });
    const low = above < need - 1e-6;
    return [
      stated('B3', low ? 'sucksAir' : 'ok', low ? 'stop' : 'note', basin.id, params, limits.B3.source, low ? remedy : null),
      ...graded('B10', 'B10', above, basin.id, { pass: 'ok', warn: 'siltRoomSmall', fail: 'siltRoomSmall' }, params),
    ];
  });
}

/** B4, B5: on level below the inlet; alarm between the two. */
export function onAndAlarm(input: CheckInput): Finding[] {
  const { document } = input;
  return forPumped(input, (basin) => {
    const below = basin.inletInvert - basin.onLevel;
    const over = basin.alarmLevel - basin.onLevel;
    const params = { basin: basin.name, below, above: -below, over };
    const lower = setPart(document, basin.id, 'onLevel', basin.inletInvert - limits.B4.pass, 'remedy.lowerOn', { basin: basin.name, below: limits.B4.pass });
    const alarm = setPart(document, basin.id, 'alarmLevel', basin.onLevel + 4 * INCH, 'remedy.setAlarm', { basin: basin.name, over: 4 * INCH });
    const on = graded('B4', 'B4', below, basin.id, { pass: 'ok', warn: 'nearInlet', fail: 'aboveInlet' }, params, lower);
    if (basin.alarmLevel > basin.inletInvert + 1e-6) return [...on, stated('B5', 'aboveInlet', 'stop', basin.id, params, limits.B5Low.source, alarm)];
    const usual = over >= limits.B5Low.pass - 1e-6 && over <= limits.B5High.pass + 1e-6;
    return [...on, stated('B5', usual ? 'ok' : 'unusual', usual ? 'note' : 'caution', basin.id, params, limits.B5Low.source, usual ? null : alarm)];
  });
}

/** B6, P7: float clear of everything, and of a kind that fits the basin. */
export function floats(input: CheckInput): Finding[] {
  const { document } = input;
  return forPumped(input, (basin) => {
    const params = { basin: basin.name, clearance: basin.floatClearance, diameter: basin.diameter };
    const clear = graded('B6', 'B6', basin.floatClearance, basin.id, { pass: 'ok', warn: 'close', fail: 'touches' }, params);
    const remedy = setPart(document, basin.id, 'floatKind', 'vertical', 'remedy.verticalFloat', { basin: basin.name });
    if (basin.floatKind !== 'tether') return [...clear, stated('P7', 'ok', 'note', basin.id, params, limits.P7.source)];
    return [...clear, ...graded('P7', 'P7', basin.diameter, basin.id, { pass: 'ok', fail: 'tetherInSmallBasin' }, params, remedy)];
  });
}

/** B7: flotation at the high water table and with water at grade. The remedy is the collar that holds both. */
export function flotationChecks(input: CheckInput): Finding[] {
  const { document } = input;
  const { soil } = document.site;
  return partsOf(document, 'basin').flatMap((basin) => {
    const result = resultOf(input, basin);
    const atGrade = collarFor(basin, soil.gradeLevel, limits.B7Grade.pass);
    const atTable = soil.seasonalHighWaterTable === null ? 0 : collarFor(basin, soil.seasonalHighWaterTable, limits.B7Table.pass);
    const collar = Math.floor(Math.max(atGrade, atTable) * 1000 + 1) / 1000;
    const remedy = setPart(document, basin.id, 'collarVolume', collar, 'remedy.largerCollar', { basin: basin.name, volume: collar });
    const params = { basin: basin.name, atTable: result.flotationAtWaterTable ?? 0, atGrade: result.flotationAtGrade };
    const codes = { warn: 'lightAtGrade', fail: 'floatsAtGrade' } as const;
    const grade = graded('B7', 'B7Grade', result.flotationAtGrade, basin.id, codes, params, remedy);
    if (result.flotationAtWaterTable === null) {
      const unknown = soil.seasonalHighWaterTable === null ? [stated('B7', 'waterTableUnknown', 'caution', basin.id, params, limits.B7Table.source)] : [];
      return grade.length + unknown.length > 0 ? [...grade, ...unknown] : [stated('B7', 'ok', 'note', basin.id, params, limits.B7Grade.source)];
    }
    const table = graded('B7', 'B7Table', result.flotationAtWaterTable, basin.id, { warn: 'lightAtWaterTable', fail: 'floatsAtWaterTable' }, params, remedy);
    return grade.length + table.length > 0 ? [...grade, ...table] : [stated('B7', 'ok', 'note', basin.id, params, limits.B7Table.source)];
  });
}

/** B8, B9: wall and lid. */
export function wallAndLid(input: CheckInput): Finding[] {
  const { document } = input;
  const table = document.site.soil.seasonalHighWaterTable;
  const wallSource = 'Ours: a perforated basin below the water table pumps ground water for ever and draws fines';
  const lidSource = 'Model plumbing code for sumps: a fixed, load-rated cover; from memory';
  return partsOf(document, 'basin').flatMap((basin) => {
    const params = { basin: basin.name };
    const wet = basin.wall === 'perforated' && (table === null || table > basin.offLevel);
    return [
      stated('B8', wet ? 'perforatedWet' : 'ok', wet ? 'stop' : 'note', basin.id, params, wallSource, wet ? setPart(document, basin.id, 'wall', 'solid', 'remedy.solidBasin', params) : null),
      stated('B9', basin.lidFixed ? 'ok' : 'loose', basin.lidFixed ? 'note' : 'stop', basin.id, params, lidSource,
        basin.lidFixed ? null : setPart(document, basin.id, 'lidFixed', true, 'remedy.boltLid', params)),
    ];
  });
}
