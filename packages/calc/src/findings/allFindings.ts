import type { DesignDocument } from '../document/document.ts';
import type { Finding, Results, Severity } from '../results/results.ts';
import * as basins from './basins.ts';
import { dryWells } from './dryWells.ts';
import * as electrical from './electrical.ts';
import type { CheckInput } from './finding.ts';
import * as freeboards from './freeboard.ts';
import * as inlets from './inlets.ts';
import * as levels from './levels.ts';
import * as lines from './lines.ts';
import * as method from './method.ts';
import * as outlets from './outlets.ts';
import { limitsInForce } from './overrides.ts';
import * as pipes from './pipes.ts';
import * as pumps from './pumps.ts';
import * as referrals from './referrals.ts';
import * as roof from './roof.ts';

export type Check = (input: CheckInput) => Finding[];

/** Every check, in the order in which findings of one weight are told. */
export const checks: readonly Check[] = [
  referrals.observations, referrals.bigSites, method.rainTable, method.lossAndResponse, method.stormType, method.wetGround, method.textureOnly,
  levels.surveyClosure, levels.soilFall, levels.fallAtHouse, levels.gravity, levels.gravityPaths, freeboards.freeboard, levels.grateStep, levels.landings,
  roof.recirculation, roof.gutters, roof.areasOnLot, roof.roofLines,
  inlets.grateCapacity, inlets.grates, inlets.leafLoad, inlets.channelDepth, inlets.channelFall, inlets.channelOutlet, inlets.channelSurround,
  pipes.pipeFall, pipes.pipeCapacity, pipes.pipeCleansing, pipes.pipeCover, pipes.cleanouts, pipes.footings, pipes.bends, pipes.pipeMaterial,
  basins.cycling, basins.offLevel, basins.onAndAlarm, basins.floats, basins.flotationChecks, basins.wallAndLid,
  pumps.duty, freeboards.pumpedFreeboard, pumps.groundWater, pumps.lineVelocity, pumps.solids, pumps.secondPump, pumps.returns, lines.freeze, lines.lineCover,
  outlets.outletQuestions, outlets.pits, outlets.distances, outlets.receivingWater, outlets.erosion, dryWells,
  electrical.electrical, electrical.outageChecks, electrical.poolBonding,
];

const rank: Readonly<Record<Severity, number>> = { refer: 0, stop: 1, caution: 2, note: 3 };

/** All findings of a document and its results, the gravest first, otherwise in the order of the checks. Limits are those in force for the document. */
export function allFindings(document: DesignDocument, results: Results): Finding[] {
  const input: CheckInput = { document, results, limits: limitsInForce(document.limits) };
  return checks.flatMap((check) => check(input)).map((finding, index) => ({ finding, index }))
    .sort((a, b) => rank[a.finding.severity] - rank[b.finding.severity] || a.index - b.index)
    .map(({ finding }) => finding);
}
