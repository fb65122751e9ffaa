import { flotation } from '../basin/flotation.ts';
import { aloneRunTime, worstStartsPerHour } from '../basin/wetWellCycle.ts';
import type { Basin, DesignDocument, Outlet, Pump } from '../document/document.ts';
import { hoseTest } from '../levels/hoseTest.ts';
import { stageCurve, volumeAtLevel } from '../levels/stageVolume.ts';
import { systemHead } from '../pump/dutyPoint.ts';
import { headAtFlow } from '../pump/pumpCurve.ts';
import type { BasinResult, CurveSample, DutyPoint, ExistingDrainResult, LowSpotResult, OutletResult, PumpResult } from '../results/results.ts';
import { partsOf } from '../routing/pathParts.ts';
import { dischargePath, dutyAt, pumpLineOf, weepAt, type PumpLine } from '../routing/pumpLine.ts';
import { exitOf } from './exitVelocity.ts';
import type { SizesContext } from './sizes.ts';

const curveSamples = 24;
/** A cycle cannot be told of less water than a cup: keeps the division finite when the line runs back more than the basin works with. */
const leastWorkingVolume = 2.5e-4;

/** Volume between the floats, with what stands in the pipes between them, less what runs back at each stop [m3]. */
export function workingVolume(context: Pick<SizesContext, 'document' | 'model'>, index: number): number {
  const store = context.model.basins[index]!;
  const between = store.storage.volume(store.onLevel) - store.storage.volume(store.offLevel);
  return Math.max(leastWorkingVolume, between - (store.pump?.runBack ?? 0));
}

export function dutyPumpsOf(document: DesignDocument, basin: Basin): Pump[] {
  return partsOf(document, 'pump').filter((pump) => pump.basin === basin.id && pump.role === 'duty');
}

/** Flow of the duty pumps of a basin at its off level, nothing taken off [m3/s]. */
export function dutyFlow(document: DesignDocument, basin: Basin): number {
  return dutyPumpsOf(document, basin).reduce((sum, pump) => sum + dutyAt(pumpLineOf(document, pump), basin.offLevel).flow, 0);
}

/** How a basin holds itself down; nothing else of it is told from so little. */
export type BasinFlotation = Pick<BasinResult, 'part' | 'flotationAtWaterTable' | 'flotationAtGrade' | 'upliftAtWaterTable'>;

export function basinFlotations(document: DesignDocument): BasinFlotation[] {
  const { soil } = document.site;
  return partsOf(document, 'basin').map((basin) => {
    const table = soil.seasonalHighWaterTable === null ? null : flotation(basin, soil.seasonalHighWaterTable);
    const grade = flotation(basin, Math.max(soil.gradeLevel, basin.floorLevel + 0.01));
    return { part: basin.id, flotationAtWaterTable: table?.factor ?? null, flotationAtGrade: grade.factor ?? 0, upliftAtWaterTable: table === null ? null : table.uplift };
  });
}

/** @param dutyFlowOf flow of the duty pumps of a basin at its off level [m3/s] */
export function basinResults(
  context: Pick<SizesContext, 'document' | 'model'>, dutyFlowOf: (basin: Basin) => number = (basin) => dutyFlow(context.document, basin),
): BasinResult[] {
  const { document } = context;
  const flotations = basinFlotations(document);
  return partsOf(document, 'basin').map((basin, index) => {
    const volume = workingVolume(context, index);
    const flow = dutyFlowOf(basin);
    const { flotationAtWaterTable, flotationAtGrade, upliftAtWaterTable } = flotations[index]!;
    return {
      part: basin.id, workingVolume: volume, worstStartsPerHour: flow > 0 ? worstStartsPerHour(volume, flow) : 0,
      aloneRunTime: flow > 0 ? aloneRunTime(volume, flow) : 0, flotationAtWaterTable, flotationAtGrade, upliftAtWaterTable,
    };
  });
}

function dutyPoint(line: PumpLine, basinLevel: number): DutyPoint {
  const duty = dutyAt(line, basinLevel);
  return { basinLevel, staticHead: dischargePath(line, basinLevel).staticHead, flow: duty.flow, head: duty.head, velocity: duty.velocity };
}

function samples(runOut: number, headAt: (flow: number) => number): CurveSample[] {
  return Array.from({ length: curveSamples + 1 }, (_, i) => {
    const flow = (runOut * i) / curveSamples;
    return { flow, head: headAt(flow) };
  });
}

/** A pump on its line; how much of its basin's working volume runs back is told with the basin. */
export type PumpDuty = Omit<PumpResult, 'runBackShare'>;

export function pumpDuties(document: DesignDocument): PumpDuty[] {
  return partsOf(document, 'pump').map((pump) => {
    const line = pumpLineOf(document, pump);
    const dutyAtOff = dutyPoint(line, line.basin.offLevel);
    const weepFlow = weepAt(line, dutyAtOff.head);
    return {
      part: pump.id, line: line.line.id, outlet: line.outlet.id, equivalentLength: line.equivalentLength, dutyAtOff,
      dutyAtOn: dutyPoint(line, line.basin.onLevel), lineVolume: line.lineVolume, runBack: line.lineVolume,
      weepFlow, weepShare: dutyAtOff.flow > 0 ? weepFlow / dutyAtOff.flow : 0,
      systemCurve: samples(line.curve.runOut, (flow) => systemHead(dischargePath(line, line.basin.offLevel), flow)),
      pumpCurve: samples(line.curve.runOut, (flow) => headAtFlow(line.curve, flow)),
    };
  });
}

export function pumpResults({ document, model }: Pick<SizesContext, 'document' | 'model'>, duties: readonly PumpDuty[] = pumpDuties(document)): PumpResult[] {
  const pumps = partsOf(document, 'pump');
  return duties.map((duty, place) => {
    const index = partsOf(document, 'basin').findIndex((basin) => basin.id === pumps[place]!.basin);
    const store = model.basins[index]!;
    const { weepFlow, weepShare, systemCurve, pumpCurve, ...before } = duty;
    return { ...before, runBackShare: duty.lineVolume / (store.storage.volume(store.onLevel) - store.storage.volume(store.offLevel)), weepFlow, weepShare, systemCurve, pumpCurve };
  });
}

export function outletResults(document: DesignDocument, pumps: readonly PumpDuty[]): OutletResult[] {
  return partsOf(document, 'outlet').map((outlet) => ({
    part: outlet.id, ...exitOfOutlet(document, outlet, pumps), pitVolume: outlet.pit === null ? null : outlet.pit.area * outlet.pit.depth * outlet.pit.voids,
    lineVolume: pumps.filter((pump) => pump.outlet === outlet.id).reduce((sum, pump) => sum + pump.lineVolume, 0),
  }));
}

function exitOfOutlet(document: DesignDocument, outlet: Outlet, pumps: readonly PumpDuty[]): Pick<OutletResult, 'exitFlow' | 'exitVelocity'> {
  const exit = exitOf(document, outlet, pumps);
  return { exitFlow: exit?.flow ?? null, exitVelocity: exit?.velocity ?? null };
}

export function lowSpotResults(document: DesignDocument): LowSpotResult[] {
  return document.site.lowSpots.map((spot) => {
    const curve = stageCurve(spot.stageArea);
    const sills = document.site.sills.filter((sill) => sill.lowSpot === spot.id).map((sill) => sill.level);
    const lowestSill = sills.reduce((low, level) => Math.min(low, level), spot.rimLevel);
    return { lowSpot: spot.id, volumeToSill: volumeAtLevel(curve, lowestSill), volumeToRim: volumeAtLevel(curve, spot.rimLevel) };
  });
}

export function existingDrainResults(document: DesignDocument): ExistingDrainResult[] {
  return document.site.existingDrains.map((drain) => {
    if (drain.backedUpAfter === null || drain.backedUpAfter === 0 || drain.hoseFlow === 0) {
      return { drain: drain.id, backedUpVolume: null, blindLength: null };
    }
    const { volume, blindLength } = hoseTest(drain.hoseFlow, drain.backedUpAfter, drain.diameter);
    return { drain: drain.id, backedUpVolume: volume, blindLength };
  });
}
