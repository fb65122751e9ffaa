import type { DesignDocument } from '../document/document.ts';
import type { Finding, Results, Severity } from '../results/results.ts';
import * as basins from './basins.ts';
import * as electrical from './electrical.ts';
import type { CheckInput } from './finding.ts';
import * as inlets from './inlets.ts';
import * as levels from './levels.ts';
import { limits } from './limits.ts';
import * as outlets from './outlets.ts';
import * as pipes from './pipes.ts';
import * as pumps from './pumps.ts';
import * as referrals from './referrals.ts';
import * as roof from './roof.ts';

type Check = (input: CheckInput) => Finding[];

const checks: readonly Check[] = [
  referrals.observations, referrals.bigSites, referrals.rainTable,
  levels.fallAtHouse, levels.gravity, levels.gravityPaths, levels.freeboard, levels.grateStep,
  roof.recirculation, roof.gutters, roof.roofLines,
  inlets.grateCapacity, inlets.grates, inlets.leafLoad, inlets.channelDepth, inlets.channelFall, inlets.channelOutlet, inlets.channelSurround,
  pipes.pipeFall, pipes.pipeCapacity, pipes.pipeCleansing, pipes.pipeCover, pipes.cleanouts, pipes.bends, pipes.pipeMaterial,
  basins.cycling, basins.offLevel, basins.onAndAlarm, basins.floats, basins.flotationChecks, basins.wallAndLid,
  pumps.duty, pumps.groundWater, pumps.lineVelocity, pumps.solids, pumps.secondPump, pumps.returns,
  outlets.outletQuestions, outlets.pits, outlets.soakTime, outlets.distances,
  electrical.electrical, electrical.outageChecks, electrical.licensedTrades,
];

const rank: Readonly<Record<Severity, number>> = { refer: 0, stop: 1, caution: 2, note: 3 };

/** All findings of a document and its results, the gravest first, otherwise in the order of the checks. */
export function allFindings(document: DesignDocument, results: Results): Finding[] {
  const input: CheckInput = { document, results, limits };
  return checks.flatMap((check) => check(input)).map((finding, index) => ({ finding, index }))
    .sort((a, b) => rank[a.finding.severity] - rank[b.finding.severity] || a.index - b.index)
    .map(({ finding }) => finding);
}
