import type { Answer, Outlet, OutletQuestions } from '../document/document.ts';
import type { Finding } from '../results/results.ts';
import { partsOf } from '../routing/pathParts.ts';
import { graded, setPart, stated, type CheckInput } from './finding.ts';
import { limits } from './limits.ts';

type OutletCheck = 'O1' | 'O2' | 'O3' | 'O4' | 'O5' | 'O6' | 'O7' | 'O8' | 'O9' | 'O10';

const questions: readonly (readonly [check: OutletCheck, key: keyof OutletQuestions])[] = [
  ['O1', 'outletTypeNamed'], ['O2', 'ownerKnown'], ['O3', 'permissionHeld'], ['O4', 'notSanitarySewer'], ['O5', 'notOntoNeighbour'],
  ['O6', 'associationAgrees'], ['O7', 'rightOfWayPermit'], ['O8', 'noWetland'], ['O9', 'clearOfSepticAndWell'], ['O10', 'noEasementConflict'],
];
const answerSource = 'Outlet questions of the trade: an outlet is a legal fact; local law decides';

function answered(outlet: Outlet, check: OutletCheck, answer: Answer): Finding {
  const params = { outlet: outlet.name };
  if (answer === 'no') return stated(check, 'no', 'stop', outlet.id, params, answerSource);
  if (answer === 'unknown') return stated(check, 'unknown', 'caution', outlet.id, params, answerSource);
  return stated(check, 'ok', 'note', outlet.id, params, answerSource);
}

/** O1 to O10: "no" stops, "unknown" keeps the design provisional: priced, not released to dig. */
export function outletQuestions({ document }: CheckInput): Finding[] {
  return partsOf(document, 'outlet').flatMap((outlet) => questions.map(([check, key]) => answered(outlet, check, outlet.questions[key])));
}

/** N3, N5: a percolation pit holds the line's content and stands above the water table. */
export function pits({ document, results }: CheckInput): Finding[] {
  const table = document.site.soil.seasonalHighWaterTable;
  return partsOf(document, 'outlet').flatMap((outlet) => {
    const result = results.outlets.find((item) => item.part === outlet.id)!;
    if (outlet.pit === null || result.pitVolume === null) return [];
    const params = { outlet: outlet.name, pit: result.pitVolume, line: result.lineVolume, above: table === null ? 0 : outlet.pit.bottomLevel - table };
    const area = Math.floor((result.lineVolume / (outlet.pit.depth * outlet.pit.voids)) * 100 + 1) / 100;
    const remedy = setPart(document, outlet.id, 'pit', area, 'remedy.widerPit', { outlet: outlet.name, area });
    const wider = { ...remedy, patch: [{ path: `${remedy.patch[0]!.path}/area`, value: area }] };
    const share = result.lineVolume > 0 ? result.pitVolume / result.lineVolume : 99;
    const size = graded('N3', 'N3', share, outlet.id, { pass: 'ok', warn: 'small', fail: 'small' }, params, wider);
    if (table === null) return [...size, stated('N5', 'waterTableUnknown', 'caution', outlet.id, params, limits.N5.source)];
    return [...size, ...graded('N5', 'N5', outlet.pit.bottomLevel - table, outlet.id, { pass: 'ok', fail: 'inWaterTable' }, params)];
  });
}

/** Share of the measured rate that is counted. Source: design manuals, half the test. */
const ratedShare = 0.5;

/** N6: time in which a full pit soaks away through its floor. */
export function soakTime({ document }: CheckInput): Finding[] {
  const rate = document.site.soil.infiltrationRate;
  return partsOf(document, 'outlet').flatMap((outlet) => {
    if (outlet.pit === null) return [];
    if (rate === null || rate === 0) return [stated('N6', 'untested', 'note', outlet.id, { outlet: outlet.name }, limits.N6.source)];
    const time = (outlet.pit.depth * outlet.pit.voids) / (ratedShare * rate);
    return graded('N6', 'N6', time, outlet.id, { pass: 'ok', warn: 'slow', fail: 'tooSlow' }, { outlet: outlet.name, time });
  });
}

/** N4: distances of what lets water out into the ground or onto it. */
export function distances({ document }: CheckInput): Finding[] {
  return partsOf(document, 'outlet').flatMap((outlet) => {
    if (outlet.outletKind === 'stormConnection' || outlet.outletKind === 'curb') return [];
    const foundation = { outlet: outlet.name, distance: outlet.distanceToFoundation };
    const lotLine = { outlet: outlet.name, distance: outlet.distanceToLotLine };
    return [
      ...graded('N4', 'N4Foundation', outlet.distanceToFoundation, outlet.id, { pass: 'ok', warn: 'nearFoundation', fail: 'nearFoundation' }, foundation),
      ...graded('N4', 'N4LotLine', outlet.distanceToLotLine, outlet.id, { warn: 'nearLotLine', fail: 'nearLotLine' }, lotLine),
    ];
  });
}
