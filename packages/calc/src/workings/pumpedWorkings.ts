import type { Basin, Pump } from '../document/document.ts';
import { dutyFlow } from '../evaluate/pumpedParts.ts';
import { partById } from '../routing/pathParts.ts';
import { pumpLineOf } from '../routing/pumpLine.ts';
import { DRILLED_HOLE } from '../pump/weepHole.ts';
import { hazenWilliamsSlope } from '../pump/hazenWilliams.ts';
import type { Working } from '../results/results.ts';
import { fieldOf, symbol, working, type WorkingInput } from './working.ts';

export function pumpWorkings({ document, results }: WorkingInput): Working[] {
  return results.pumps.flatMap((item) => {
    const line = pumpLineOf(document, partById(document, item.part) as Pump);
    const slope = hazenWilliamsSlope(item.dutyAtOff.flow, line.line.innerDiameter, line.line.hazenWilliamsC);
    const lineField = (field: string): string => fieldOf(document, line.line.id, field);
    return [
      working(`pumps.${item.part}.equivalentLength`, 'L_e = L + sum of fittings', [
        symbol('L', 'length', line.line.length, 'length', lineField('length')), symbol('F', 'fittings', item.equivalentLength - line.line.length, 'length', lineField('fittings')),
      ], item.equivalentLength, 'length', 'Equivalent lengths of fittings, handbooks'),
      working(`pumps.${item.part}.dutyAtOff`, 'H(Q) = z_out - z_off + h_lid + L_e 10.67 Q^1.852 / (C^1.852 d^4.8704)', [
        symbol('z_out - z_off', 'staticHead', item.dutyAtOff.staticHead, 'length', fieldOf(document, line.basin.id, 'offLevel')),
        symbol('h_lid', 'openingHead', line.outlet.openingHead, 'length', fieldOf(document, line.outlet.id, 'openingHead')),
        symbol('L_e', 'equivalentLength', item.equivalentLength, 'length', `pumps.${item.part}.equivalentLength`),
        symbol('S', 'frictionSlope', slope, 'slope'), symbol('C', 'hazenWilliamsC', line.line.hazenWilliamsC, 'number', lineField('hazenWilliamsC')),
        symbol('d', 'innerDiameter', line.line.innerDiameter, 'length', lineField('innerDiameter')),
        symbol('H', 'pumpHead', item.dutyAtOff.head, 'length', fieldOf(document, item.part, 'curve')),
      ], item.dutyAtOff.flow, 'flow', 'Pump datasheet by PCHIP; Hazen-Williams in SI'),
      working(`pumps.${item.part}.lineVolume`, 'V = pi/4 d^2 L', [
        symbol('d', 'innerDiameter', line.line.innerDiameter, 'length', lineField('innerDiameter')), symbol('L', 'length', line.line.length, 'length', lineField('length')),
      ], item.lineVolume, 'volume', 'Geometry'),
      ...(line.weep === null ? [] : [working(`pumps.${item.part}.weepFlow`, 'Q = C pi/4 d^2 sqrt(2 g h)', [
        symbol('C', 'coefficient', DRILLED_HOLE, 'number'), symbol('d', 'weepDiameter', line.weep.diameter, 'length', fieldOf(document, line.weep.id, 'diameter')),
        symbol('h', 'pumpHead', item.dutyAtOff.head, 'length', `pumps.${item.part}.dutyAtOff`),
      ], item.weepFlow, 'flow', 'Orifice, N.J.A.C. 7:9A-9.7')]),
    ];
  });
}

export function basinWorkings({ document, results }: WorkingInput): Working[] {
  return results.basins.filter((item) => item.worstStartsPerHour > 0).flatMap((item) => {
    const basin = partById(document, item.part) as Basin;
    const volume = symbol('V', 'workingVolume', item.workingVolume, 'volume', `basins.${item.part}.workingVolume`);
    const flow = symbol('Q_p', 'pumpFlow', dutyFlow(document, basin), 'flow', 'pumps');
    return [
      working(`basins.${item.part}.workingVolume`, 'V = A (z_on - z_off) - V_back', [
        symbol('d', 'basinDiameter', basin.diameter, 'length', fieldOf(document, item.part, 'diameter')),
        symbol('z_on', 'onLevel', basin.onLevel, 'level', fieldOf(document, item.part, 'onLevel')),
        symbol('z_off', 'offLevel', basin.offLevel, 'level', fieldOf(document, item.part, 'offLevel')),
      ], item.workingVolume, 'volume', 'Geometry'),
      working(`basins.${item.part}.worstStartsPerHour`, 'N = 3600 Q_p / (4 V)', [flow, volume], item.worstStartsPerHour, 'count', 'MIL-HDBK-1005/9A, UFC 3-240-04A: worst at half the pump\'s flow'),
      working(`basins.${item.part}.aloneRunTime`, 'T = V / Q_p', [volume, flow], item.aloneRunTime, 'seconds', 'Volume over time'),
    ];
  });
}

/** Freeboard of every sill in the design storm, with what bounds it. */
export function freeboardWorkings({ document, results }: WorkingInput): Working[] {
  return results.freeboards.filter((item) => item.returnPeriod === document.rain.designReturnPeriod).map((item) => {
    const index = document.site.sills.findIndex((sill) => sill.id === item.sill);
    const sill = document.site.sills[index]!;
    return working(`freeboards.${item.sill}`, 'F = z_sill - z_max', [
      symbol('z_sill', 'sillLevel', sill.level, 'level', `/site/sills/${index}/level`),
      symbol('z_max', 'highestLevel', sill.level - item.onTwin, 'level', 'storm'),
      symbol('F_low', 'bandLower', item.lower, 'height'), symbol('F_high', 'bandUpper', item.upper, 'height'),
      symbol('F_0', 'withoutSystem', item.withoutSystem, 'height'),
    ], item.onTwin, 'height', 'Coupled level-pool routing, Chow, Maidment and Mays 1988; pump running only above its on level');
  });
}
