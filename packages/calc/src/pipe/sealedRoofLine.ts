import { GRAVITY } from '../common/constants.ts';
import { requireFinite, requireNotNegative, requirePositive } from '../common/require.ts';
import { bracketedRoot } from '../math/bracketedRoot.ts';
import { PI } from '../math/constants.ts';
import { fullFrictionSlope } from './fullFlowLosses.ts';

export interface SealedRoofLine {
  readonly diameter: number;
  readonly length: number;
  /** Manning n. */
  readonly roughness: number;
  /** Sum of bends, joints and the entrance from the leader, in velocity heads. */
  readonly bendLoss: number;
  readonly exitLoss: number;
  /** Level at which water leaves at the lid, or of the water that stands over it [m]. */
  readonly lidLevel: number;
  /** Head that lifts the lid [m]. */
  readonly openingHead: number;
  /** Lowest joint at the house that is not sealed: water comes out above it [m]. */
  readonly lowestOpenJoint: number;
  /** Lowest point of the line [m]. */
  readonly lowestInvert: number;
  /** Level at which a weep hole or tee lets the line drain [m]; null without one. */
  readonly weepLevel: number | null;
}

export interface SealedLineResult {
  readonly velocity: number;
  readonly exit: number;
  readonly lid: number;
  readonly friction: number;
  readonly bends: number;
  /** Level of the pressure line at the house [m]. */
  readonly levelAtHouse: number;
  /** Lowest open joint less that level [m]; below 0 water comes out at the house. */
  readonly margin: number;
  /** Level at which water stands in the line between storms [m]. */
  readonly standingLevel: number;
  /** The line drains whole between storms. */
  readonly empties: boolean;
}

/** Head that the line needs over its lid at a flow [m]. */
function lossesAt(line: SealedRoofLine, flow: number): { velocity: number; exit: number; friction: number; bends: number } {
  const velocity = flow / ((PI / 4) * line.diameter * line.diameter);
  const head = (velocity * velocity) / (2 * GRAVITY);
  return { velocity, exit: line.exitLoss * head, friction: fullFrictionSlope(flow, line.diameter, line.roughness) * line.length, bends: line.bendLoss * head };
}

function requireLine(line: SealedRoofLine): void {
  requirePositive({ diameter: line.diameter, length: line.length, roughness: line.roughness });
  requireNotNegative({ bendLoss: line.bendLoss, exitLoss: line.exitLoss, openingHead: line.openingHead });
  requireFinite({ lidLevel: line.lidLevel, lowestOpenJoint: line.lowestOpenJoint, lowestInvert: line.lowestInvert });
  if (line.weepLevel !== null) requireFinite({ weepLevel: line.weepLevel });
}

/**
 * Energy along a sealed roof line, from the lid on the lawn up to the house. It runs full under pressure.
 *
 *   level at house = lid + opening head + (K_exit + K_bends)*v^2/(2*g) + Sf*L
 *
 * @param line size, losses and levels
 * @param flow from the leaders [m3/s], >= 0
 * @returns losses [m], level at the house and its margin to the lowest open joint [m], standing level
 * Limits: every joint below that level must be sealed; without a weep the line stands full to its lid
 * Source: energy equation with Manning friction
 * Checked against: fixtures/pipe/sealedRoofLine.json, worked by hand
 */
export function sealedRoofLine(line: SealedRoofLine, flow: number): SealedLineResult {
  requireLine(line);
  requireNotNegative({ flow });
  const { velocity, exit, friction, bends } = lossesAt(line, flow);
  const lid = flow > 0 ? line.openingHead : 0;
  const levelAtHouse = line.lidLevel + lid + exit + friction + bends;
  const standingLevel = Math.max(line.lowestInvert, Math.min(line.weepLevel ?? line.lidLevel, line.lidLevel));
  return { velocity, exit, lid, friction, bends, levelAtHouse, margin: line.lowestOpenJoint - levelAtHouse, standingLevel, empties: standingLevel <= line.lowestInvert };
}

/**
 * Flow at which a sealed roof line comes out at the lowest open joint.
 *
 * @param line size, losses and levels
 * @returns Q [m3/s]; 0 when the joint is not higher than lid and opening head
 * Source: as sealedRoofLine, turned round
 * Checked against: sealedRoofLine, whose margin at that flow is nothing, 1e-9 m
 */
export function sealedLineCapacity(line: SealedRoofLine): number {
  requireLine(line);
  const room = line.lowestOpenJoint - line.lidLevel - line.openingHead;
  if (room <= 0) return 0;
  const excess = (flow: number): number => {
    const { exit, friction, bends } = lossesAt(line, flow);
    return exit + friction + bends - room;
  };
  let high = line.diameter * line.diameter;
  while (excess(high) < 0) high *= 2;
  return bracketedRoot(excess, 0, high, 1e-14 * high);
}
