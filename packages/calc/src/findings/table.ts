import { findingCodes, type FindingCode } from './codes.ts';
import type { CheckId } from './finding.ts';
import type { LimitId } from './limits.ts';

interface Row {
  readonly what: string;
  /** Limits that the check reads. */
  readonly limits: readonly LimitId[];
  /** Source of a check that has no limit of its own. */
  readonly source?: string;
}

const legal = 'Outlet questions of the trade; local law decides';

/** Every check: what it looks at, the limits that it reads, and where it comes from when it reads none. */
const rows: Readonly<Record<CheckId, Row>> = {
  R: { what: 'Cases that the method does not cover', limits: ['R1', 'R2'], source: 'Cases for a licensed engineer or the authority' },
  rain: { what: 'Rain table fit to build from', limits: [], source: 'Ours' },
  M: { what: 'Range of the methods', limits: ['MRunoff', 'MUnit', 'MResponse', 'MTable', 'MGrate'] },
  L1: { what: 'Survey closes', limits: ['L1'] },
  L2: { what: 'Soil falls away from the house', limits: ['L2'] },
  L3: { what: 'Paving falls away from the house', limits: ['L3'] },
  L4: { what: 'Gravity feasible', limits: ['L4'] },
  L5: { what: 'Freeboard at the sill, design storm', limits: ['L5'] },
  L6: { what: 'Freeboard at the sill, check storm', limits: ['L6'] },
  L7: { what: 'Step at the grate', limits: ['L7', 'L7Low'] },
  L8: { what: 'Step at the door', limits: ['L8Egress', 'L8Other'] },
  D1: { what: 'Outlet does not send water back', limits: ['D1', 'D1Fall'] },
  D2: { what: 'Gutters, leaders, sealed roof lines, areas', limits: ['D2', 'D2Head'] },
  I1: { what: 'Grate capacity', limits: ['I1'] },
  I2: { what: 'Slots where people walk', limits: ['I2', 'I2Heel'] },
  I3: { what: 'Load class of the grate', limits: [], source: 'Load classes of grates' },
  I4: { what: 'Leaf load', limits: ['I4'] },
  I5: { what: 'Grate locked', limits: [], source: 'Common practice' },
  C1: { what: 'Depth in the channel', limits: ['C1'] },
  C2: { what: 'Fall of the channel floor', limits: ['C2'] },
  C3: { what: 'Growth in depth and take-over by the pipe', limits: ['C3'] },
  C4: { what: 'Channel outlet', limits: ['C4'] },
  C5: { what: 'Concrete around the channel', limits: ['C5Foot', 'C5Car'] },
  G1: { what: 'Fall of the pipe', limits: ['G1'] },
  G2: { what: 'Capacity of the pipe', limits: ['G2'] },
  G3: { what: 'Pipe cleans itself', limits: ['G3', 'G3Stress', 'G3Fast'] },
  G4: { what: 'Cover', limits: ['G4', 'G4Strong', 'G4Wheels'] },
  G5: { what: 'Cleanouts', limits: ['G5'] },
  G6: { what: 'Footings and treated ground', limits: [], source: 'IRC P2604.4, from memory; common practice' },
  G7: { what: 'Bends', limits: [], source: 'Common practice' },
  G8: { what: 'Pipe material', limits: ['G8'] },
  G9: { what: 'Joints', limits: [], source: 'Common practice' },
  B1: { what: 'Starts per hour', limits: ['B1'] },
  B2: { what: 'Run time alone', limits: ['B2'] },
  B3: { what: 'Stop level', limits: ['B3'] },
  B4: { what: 'Start level below the inlet', limits: ['B4'] },
  B5: { what: 'Alarm level', limits: ['B5Low', 'B5High'] },
  B6: { what: 'Float free', limits: ['B6'] },
  B7: { what: 'Flotation', limits: ['B7Table', 'B7Grade'] },
  B8: { what: 'Basin wall', limits: [], source: 'Ours' },
  B9: { what: 'Lid', limits: [], source: 'Model plumbing code for sumps; from memory' },
  B10: { what: 'Room for silt', limits: ['B10'] },
  P1: { what: 'Duty on the curve', limits: ['P1'] },
  P2: { what: 'Freeboard with the duty flow', limits: ['L5'] },
  P3: { what: 'Pump ahead of ground water', limits: ['P3'] },
  P4: { what: 'Velocity in the line', limits: ['P4Slow', 'P4Fast'] },
  P5: { what: 'Lift against shut-off', limits: ['P5'] },
  P6: { what: 'Solids', limits: ['P6'] },
  P7: { what: 'Kind of float', limits: ['P7'] },
  P8: { what: 'Second pump', limits: ['E5'] },
  N1: { what: 'Run-back without a check valve', limits: ['N1'] },
  N2: { what: 'Weep hole', limits: ['N2'] },
  N3: { what: 'Percolation pit holds the line', limits: ['N3'] },
  N4: { what: 'Distances of the outlet', limits: ['N4Foundation', 'N4LotLine'] },
  N5: { what: 'Pit above the water table', limits: ['N5'] },
  N6: { what: 'Pit soaks away', limits: ['N6'] },
  N7: { what: 'Erosion at the outlet', limits: ['N7Grass', 'N7Dense', 'N7Stone'] },
  N8: { what: 'Dry well', limits: ['N8Factor', 'N8Slow', 'N8Fast', 'N8Table', 'N8Time', 'N8Foundation'] },
  N9: { what: 'Freeze exposure', limits: [], source: 'Extension advice: bury below frost or slope to drain' },
  N10: { what: 'Outlet over what receives it', limits: ['N10'] },
  N11: { what: 'Cover of the discharge line', limits: ['N11'] },
  E1: { what: 'Circuit and receptacle', limits: [], source: 'NEC 422.5 as adopted locally; a licensed electrician decides' },
  E2: { what: 'Voltage drop', limits: ['E2'] },
  E3: { what: 'Burial of the cable', limits: ['E3Direct', 'E3Conduit', 'E3Cable'] },
  E4: { what: 'Alarm', limits: [], source: 'Common practice' },
  E5: { what: 'Power out', limits: ['E5'] },
  O1: { what: 'Outlet type', limits: [], source: legal },
  O2: { what: 'Owner of the spot', limits: [], source: legal },
  O3: { what: 'Permission', limits: [], source: legal },
  O4: { what: 'No sanitary sewer', limits: [], source: legal },
  O5: { what: 'Not onto a neighbor', limits: [], source: legal },
  O6: { what: 'Owners\' association', limits: [], source: legal },
  O7: { what: 'Right of way', limits: [], source: legal },
  O8: { what: 'Wetland', limits: [], source: legal },
  O9: { what: 'Septic field and well', limits: [], source: legal },
  O10: { what: 'Easement', limits: [], source: legal },
};

export interface CheckRow extends Row {
  readonly check: CheckId;
  readonly codes: readonly FindingCode[];
}

/** The checks with their codes, in the order of the list. */
export const checkTable: readonly CheckRow[] = (Object.keys(rows) as CheckId[]).map((check) => ({
  check, ...rows[check], codes: findingCodes.filter((code) => code.startsWith(`${check}.`)),
}));

/** The check that a limit belongs to: the first that reads it. */
export function checkOfLimit(id: LimitId): CheckRow | undefined {
  return checkTable.find((row) => row.limits.includes(id));
}
