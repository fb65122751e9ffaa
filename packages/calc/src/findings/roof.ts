import { GRAVITY } from '../common/constants.ts';
import type { DesignDocument, RoofLine } from '../document/document.ts';
import { PI } from '../math/constants.ts';
import { pow } from '../math/pow.ts';
import { bendLoss, entranceLoss, exitLoss } from '../routing/linkOf.ts';
import { partById, partsOf, pathFrom } from '../routing/pathParts.ts';
import type { Finding } from '../results/results.ts';
import { graded, stated, type CheckInput } from './finding.ts';
import { flowThrough } from '../evaluate/flows.ts';
import { limits } from './limits.ts';

/** D1: an outlet must lie outside the catchment of the low spot and below its rim, or the water comes round again. */
export function recirculation({ document }: CheckInput): Finding[] {
  const rim = document.site.lowSpots.reduce((low, spot) => Math.min(low, spot.rimLevel), Infinity);
  return partsOf(document, 'outlet').flatMap((outlet) => {
    const params = { outlet: outlet.name, below: rim - outlet.level, fall: outlet.groundFallsAway };
    if (outlet.insideCatchment) return [stated('D1', 'insideCatchment', 'stop', outlet.id, params, limits.D1.source)];
    if (rim === Infinity) return [];
    const drop = graded('D1', 'D1', rim - outlet.level, outlet.id, { warn: 'lidHigh', fail: 'aboveRim' }, params);
    const fall = graded('D1', 'D1Fall', outlet.groundFallsAway, outlet.id, { warn: 'groundFlat', fail: 'groundFallsBack' }, params);
    return drop.length + fall.length > 0 ? [...drop, ...fall] : [stated('D1', 'ok', 'note', outlet.id, params, limits.D1.source)];
  });
}

/** D2: every gutter and its leaders against the five-minute flow of the design storm. */
export function gutters({ document, results }: CheckInput): Finding[] {
  return results.gutters.flatMap((gutter) => {
    const capacity = Math.min(gutter.capacity, gutter.leaderCapacity);
    const name = partById(document, gutter.part)?.name ?? gutter.part;
    const params = { gutter: name, capacity, demand: gutter.demand, overflow: gutter.overflow };
    const ratio = gutter.demand > 0 ? capacity / gutter.demand : 99;
    return graded('D2', 'D2', ratio, gutter.part, { pass: 'ok', warn: 'tight', fail: 'overflows' }, params);
  });
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

export function roofLines({ document }: CheckInput): Finding[] {
  return partsOf(document, 'roofLine').flatMap((line) => {
    const flow = flowThrough(document, line, document.rain.designReturnPeriod);
    const spare = line.unsealedJointLevel - roofLineHead(document, line, flow);
    const volume = (PI / 4) * line.diameter * line.diameter * line.length;
    const params = { line: line.name, flow, spare, shortBy: -spare };
    return [
      ...graded('D2', 'D2Head', spare, line.id, { pass: 'lineOk', warn: 'lineTight', fail: 'lineSpills' }, params),
      stated('D2', 'lineStaysFull', 'note', line.id, { line: line.name, volume }, limits.D2Head.source),
    ];
  });
}
