import type { Basin } from '../document/document.ts';
import type { BasinResult, Finding } from '../results/results.ts';
import { partsOf } from '../routing/pathParts.ts';
import { graded, isMet, ruled, stated, type CheckInput } from './finding.ts';
import { setFields } from './patch.ts';
import { largerCollar, lowerOn, raiseOff, setAlarm, widerBasin } from './remedies/basin.ts';

/** Each check of a basin that has a pump; its result is looked up only by those that ask for it. */
function forPumped(input: CheckInput, check: (basin: Basin, resultOf: () => BasinResult) => Finding[]): Finding[] {
  const { document, results } = input;
  return partsOf(document, 'basin').filter((basin) => partsOf(document, 'pump').some((pump) => pump.basin === basin.id))
    .flatMap((basin) => check(basin, () => results.basins.find((item) => item.part === basin.id)!));
}

/** B1, B2: starts per hour at the worst inflow, and run time alone. The remedy lowers nothing: it widens the basin. */
export function cycling(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return forPumped(input, (basin, resultOf) => {
    const result = resultOf();
    const params = { basin: basin.name, starts: result.worstStartsPerHour, volume: result.workingVolume, runTime: result.aloneRunTime };
    const where = { at: basin.id, params, remedy: () => widerBasin(document, basin, limits) };
    return [
      ...graded(input, 'B1', 'B1', result.worstStartsPerHour, { pass: 'ok', warn: 'manyStarts', fail: 'tooManyStarts' }, where),
      ...graded(input, 'B2', 'B2', result.aloneRunTime, { pass: 'ok', warn: 'shortRun', fail: 'tooShortRun' }, where),
    ];
  });
}

/** B3, B10: off level over the floor, over the pump's own need, and room for silt. */
export function offLevel(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return forPumped(input, (basin) => {
    const above = basin.offLevel - basin.floorLevel;
    const need = partsOf(document, 'pump').filter((pump) => pump.basin === basin.id).reduce((most, pump) => Math.max(most, pump.minSubmergence), limits.B3.pass);
    const params = { basin: basin.name, above, need };
    const low = above < need - 1e-6;
    return [
      ruled(input, 'B3', 'B3', low ? 'sucksAir' : 'ok', low ? 'stop' : 'note', { at: basin.id, params, remedy: () => raiseOff(document, basin, need) }),
      ...graded(input, 'B10', 'B10', above, { pass: 'ok', warn: 'siltRoomSmall', fail: 'siltRoomSmall' }, { at: basin.id, params, remedy: () => raiseOff(document, basin, limits.B10.pass) }),
    ];
  });
}

function alarmOf(input: CheckInput, basin: Basin): Finding[] {
  const over = basin.alarmLevel - basin.onLevel;
  const where = { at: basin.id, params: { basin: basin.name, over, low: input.limits.B5Low.pass, high: input.limits.B5High.pass }, remedy: () => setAlarm(input.document, basin) };
  if (basin.alarmLevel > basin.inletInvert + 1e-6) return [ruled(input, 'B5', 'B5Low', 'aboveInlet', 'stop', where)];
  const low = graded(input, 'B5', 'B5Low', over, { warn: 'unusual', fail: 'unusual' }, where);
  if (low.length > 0) return low;
  return graded(input, 'B5', 'B5High', over, { pass: 'ok', warn: 'unusual', fail: 'unusual' }, where);
}

/** B4, B5: on level below the inlet; alarm between the two. */
export function onAndAlarm(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return forPumped(input, (basin) => {
    const below = basin.inletInvert - basin.onLevel;
    const params = { basin: basin.name, below, above: -below };
    const remedy = () => lowerOn(document, basin, limits.B4.pass);
    return [...graded(input, 'B4', 'B4', below, { pass: 'ok', warn: 'nearInlet', fail: 'aboveInlet' }, { at: basin.id, params, remedy }), ...alarmOf(input, basin)];
  });
}

/** B6, P7: float clear of everything, and of a kind that fits the basin. */
export function floats(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return forPumped(input, (basin) => {
    const params = { basin: basin.name, clearance: basin.floatClearance, diameter: basin.diameter };
    const move = () => setFields(document, basin, { floatClearance: limits.B6.pass }, 'remedy.moveFloat', { basin: basin.name, clearance: limits.B6.pass });
    const vertical = () => setFields(document, basin, { floatKind: 'vertical' }, 'remedy.verticalFloat', { basin: basin.name });
    const clear = graded(input, 'B6', 'B6', basin.floatClearance, { pass: 'ok', warn: 'close', fail: 'touches' }, { at: basin.id, params, remedy: move });
    const fits = basin.floatKind !== 'tether' || isMet(input, 'P7', basin.diameter);
    return [...clear, ruled(input, 'P7', 'P7', fits ? 'ok' : 'tetherInSmallBasin', fits ? 'note' : 'stop', { at: basin.id, params, remedy: vertical })];
  });
}

/** B7: flotation at the high water table and with water at grade. The remedy is the collar that holds both. */
export function flotationChecks(input: CheckInput): Finding[] {
  const { document, results, limits } = input;
  return partsOf(document, 'basin').flatMap((basin) => {
    const result = results.basins.find((item) => item.part === basin.id)!;
    const atTable = result.flotationAtWaterTable;
    const params = { basin: basin.name, atTable: atTable ?? 0, atGrade: result.flotationAtGrade };
    const where = { at: basin.id, params, remedy: () => largerCollar(document, basin, limits) };
    const grade = graded(input, 'B7', 'B7Grade', result.flotationAtGrade, { warn: 'lightAtGrade', fail: 'floatsAtGrade' }, where);
    const unknown = document.site.soil.seasonalHighWaterTable === null ? [ruled(input, 'B7', 'B7Table', 'waterTableUnknown', 'caution', { at: basin.id, params })] : [];
    const table = atTable === null ? unknown : graded(input, 'B7', 'B7Table', atTable, { warn: 'lightAtWaterTable', fail: 'floatsAtWaterTable' }, where);
    const found = [...grade, ...table];
    return found.length > 0 ? found : [ruled(input, 'B7', atTable === null ? 'B7Grade' : 'B7Table', 'ok', 'note', where)];
  });
}

const wallSource = 'Ours: a perforated basin below the water table pumps ground water for ever and draws fines';
const lidSource = 'Model plumbing code for sumps: a fixed, load-rated cover; from memory';

/** B8, B9: wall and lid. */
export function wallAndLid(input: CheckInput): Finding[] {
  const { document } = input;
  const table = document.site.soil.seasonalHighWaterTable;
  return partsOf(document, 'basin').flatMap((basin) => {
    const params = { basin: basin.name };
    const wet = basin.wall === 'perforated' && (table === null || table > basin.offLevel);
    const solid = () => setFields(document, basin, { wall: 'solid' }, 'remedy.solidBasin', params);
    const bolt = () => setFields(document, basin, { lidFixed: true }, 'remedy.boltLid', params);
    return [
      stated('B8', wet ? 'perforatedWet' : 'ok', wet ? 'stop' : 'note', wallSource, { at: basin.id, params, remedy: solid }),
      stated('B9', basin.lidFixed ? 'ok' : 'loose', basin.lidFixed ? 'note' : 'stop', lidSource, { at: basin.id, params, remedy: bolt }),
    ];
  });
}
