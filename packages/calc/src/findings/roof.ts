import { GRAVITY } from '../common/constants.ts';
import type { DesignDocument, Outlet, RoofLine } from '../document/document.ts';
import { PI } from '../math/constants.ts';
import { pow } from '../math/pow.ts';
import { bendLoss, entranceLoss, exitLoss } from '../routing/linkOf.ts';
import { partById, partsOf, pathFrom } from '../routing/pathParts.ts';
import type { Finding, GutterResult } from '../results/results.ts';
import { graded, ruled, stated, type CheckInput } from './finding.ts';
import { flowThrough } from '../evaluate/flows.ts';
import { setFields } from './patch.ts';
import { largerGutter, largerRoofLine } from './remedies/roof.ts';

function outletBeside(input: CheckInput, outlet: Outlet, rim: number): Finding[] {
  const { document, limits } = input;
  const params = { outlet: outlet.name, below: rim - outlet.level, fall: outlet.groundFallsAway };
  if (outlet.insideCatchment) return [stated('D1', 'insideCatchment', 'stop', 'Ours: water that is let out inside its own catchment comes round again', { at: outlet.id, params })];
  if (rim === Infinity) return [];
  const regrade = () => setFields(document, outlet, { groundFallsAway: limits.D1Fall.pass }, 'remedy.regradeOutlet', { outlet: outlet.name, slope: limits.D1Fall.pass });
  const drop = graded(input, 'D1', 'D1', rim - outlet.level, { warn: 'lidHigh', fail: 'aboveRim' }, { at: outlet.id, params });
  const fall = graded(input, 'D1', 'D1Fall', outlet.groundFallsAway, { warn: 'groundFlat', fail: 'groundFallsBack' }, { at: outlet.id, params, remedy: regrade });
  return drop.length + fall.length > 0 ? [...drop, ...fall] : [ruled(input, 'D1', 'D1', 'ok', 'note', { at: outlet.id, params })];
}

/** D1: an outlet must lie outside the catchment of the low spot and below its rim, or the water comes round again. */
export function recirculation(input: CheckInput): Finding[] {
  const rim = input.document.site.lowSpots.reduce((low, spot) => Math.min(low, spot.rimLevel), Infinity);
  return partsOf(input.document, 'outlet').flatMap((outlet) => outletBeside(input, outlet, rim));
}

function gutterAt(input: CheckInput, result: GutterResult): Finding[] {
  const { document, limits } = input;
  const gutter = partById(document, result.part);
  if (gutter?.kind !== 'gutter') return [];
  const capacity = Math.min(result.capacity, result.leaderCapacity);
  const params = { gutter: gutter.name, capacity, demand: result.demand, overflow: result.overflow };
  const ratio = result.demand > 0 ? capacity / result.demand : 99;
  const remedy = () => largerGutter(document, gutter, result.demand, limits);
  return graded(input, 'D2', 'D2', ratio, { pass: 'ok', warn: 'tight', fail: 'overflows' }, { at: result.part, params, remedy });
}

/** D2: every gutter and its leaders against the five-minute flow of the design storm. */
export const gutters = (input: CheckInput): Finding[] => input.results.gutters.flatMap((result) => gutterAt(input, result));

/** D2: ground beyond the lot drains here only where it is drawn as the neighbor's. */
export function areasOnLot({ document }: CheckInput): Finding[] {
  const { lotArea, catchments } = document.site;
  const area = catchments.filter(({ surface }) => surface !== 'neighbour').reduce((sum, item) => sum + item.area, 0);
  if (lotArea === null || area <= lotArea * (1 + 1e-6)) return [];
  return [stated('D2', 'areasOverLot', 'caution', 'Ours: what drains here is not more than the lot, unless run-on is drawn as the neighbor\'s', { at: null, params: { area, lot: lotArea } })];
}

/**
 * Level to which water stands in the leaders when a sealed roof line carries its design flow:
 * lid and its opening head, exit, friction, bends, entrance.
 * Source: energy equation with Manning friction, full flow
 */
export function roofLineHead(document: DesignDocument, line: RoofLine, flow: number): number {
  const outlet = pathFrom(document, line.id).find((part) => part.kind === 'outlet');
  const lid = outlet?.kind === 'outlet' ? Math.max(outlet.level + outlet.openingHead, outlet.waterLevel) : line.unsealedJointLevel;
  const velocity = flow / ((PI / 4) * line.diameter * line.diameter);
  const friction = (line.roughness * line.roughness * line.length * velocity * velocity) / pow(line.diameter / 4, 4 / 3);
  const losses = exitLoss + entranceLoss + line.bends90 * bendLoss.long90 + line.bends45 * bendLoss.bend45;
  return lid + friction + (losses * velocity * velocity) / (2 * GRAVITY);
}

const spareOf = (document: DesignDocument, line: RoofLine): number =>
  line.unsealedJointLevel - roofLineHead(document, line, flowThrough(document, line, document.rain.designReturnPeriod));

/** D2 for a sealed roof line: it runs full, and its water must stay below the lowest joint that is open. */
export function roofLines(input: CheckInput): Finding[] {
  const { document, limits } = input;
  return partsOf(document, 'roofLine').flatMap((line) => {
    const spare = spareOf(document, line);
    const volume = (PI / 4) * line.diameter * line.diameter * line.length;
    const params = { line: line.name, flow: flowThrough(document, line, document.rain.designReturnPeriod), spare, shortBy: -spare };
    const remedy = () => largerRoofLine(document, line, limits, spareOf);
    return [
      ...graded(input, 'D2', 'D2Head', spare, { pass: 'lineOk', warn: 'lineTight', fail: 'lineSpills' }, { at: line.id, params, remedy }),
      ruled(input, 'D2', 'D2Head', 'lineStaysFull', 'note', { at: line.id, params: { line: line.name, volume } }),
    ];
  });
}
