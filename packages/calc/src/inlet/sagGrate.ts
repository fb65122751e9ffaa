import { GRAVITY, INCH } from '../common/constants.ts';
import { requireNotNegative, requirePositive, requireShare } from '../common/require.ts';
import { cbrt } from '../math/cbrt.ts';
import { orificeFlow } from './orifice.ts';
import { GRATE_WEIR, weirFlow } from './weir.ts';

/** Source: FHWA HEC-22, as in TxDOT equation 10-31. */
export const GRATE_ORIFICE = 0.67;

/** Below this head the published coefficients were not measured: take 25 % either way. Source: ours. */
export const LOW_HEAD = 0.03;

export interface SagGrate {
  /** Edge over which water enters, without a side that stands against a curb or wall [m]. */
  readonly perimeter: number;
  readonly openArea: number;
  /** Share of edge and opening that is left; 0.5 when half blocked. */
  readonly clogging: number;
}

/** Spread of the capacity under that head. Source: ours. */
export const LOW_HEAD_SPREAD = 0.25;
/** Between these shares of the head at which weir and orifice agree, both act: the flow swirls and can be less. Source: ours, after the handbook's bounds. */
export const TRANSITION = { from: 0.75, to: 1.25 } as const;

export interface GrateFlow {
  readonly capacity: number;
  readonly weir: number;
  readonly orifice: number;
  readonly control: 'weir' | 'orifice';
  readonly belowPublishedHead: boolean;
  /** The head is near that at which weir and orifice agree. */
  readonly inTransition: boolean;
  /** Range of the capacity; both ends are the capacity itself where the coefficients were measured. */
  readonly low: number;
  readonly high: number;
}

/**
 * Flow that a grate in a sag takes under a head.
 *
 *   Q = min(C_w*P*d^1.5, C_o*A*sqrt(2*g*d)), P and A times the share that is left
 *
 * @param grate edge, opening, share left
 * @param head  d, depth of water over the grate [m], > 0
 * @returns capacity [m3/s] and what governs
 * Limits: under 30 mm outside the published range
 * Source: FHWA HEC-22 chapter 4; TxDOT equations 10-30, 10-31, clogging share about 0.5
 * Checked against: fixtures/inlet/sagGrate.json, rows 7.1 to 7.5, 0.3 % (the rows use g = 32.2 and C_w = 3.0)
 */
export function sagGrateFlow(grate: SagGrate, head: number): GrateFlow {
  requirePositive({ perimeter: grate.perimeter, openArea: grate.openArea, head });
  requireShare({ clogging: grate.clogging });
  const weir = weirFlow(GRATE_WEIR, grate.perimeter * grate.clogging, head);
  const orifice = orificeFlow(GRATE_ORIFICE, grate.openArea * grate.clogging, head);
  const capacity = Math.min(weir, orifice);
  const belowPublishedHead = head < LOW_HEAD;
  const spread = belowPublishedHead ? LOW_HEAD_SPREAD : 0;
  const share = head / grateTransitionHead(grate.perimeter, grate.openArea);
  return {
    capacity, weir, orifice, control: weir <= orifice ? 'weir' : 'orifice', belowPublishedHead,
    inTransition: share >= TRANSITION.from && share <= TRANSITION.to, low: capacity * (1 - spread), high: capacity * (1 + spread),
  };
}

/**
 * Head that a grate in a sag needs for a flow: the greater of weir and orifice.
 *
 *   d = max((Q/(C_w*P))^(2/3), (Q/(C_o*A))^2/(2*g)), P and A times the share that is left
 *
 * @param grate edge, opening, share left (above 0)
 * @param flow Q [m3/s], >= 0
 * @returns d [m]
 * Source: as sagGrateFlow, turned round
 * Checked against: sagGrateFlow, whose capacity at that head is the flow, 1e-9
 */
export function sagGrateHead(grate: SagGrate, flow: number): number {
  requirePositive({ perimeter: grate.perimeter, openArea: grate.openArea, clogging: grate.clogging });
  requireShare({ clogging: grate.clogging });
  requireNotNegative({ flow });
  const perEdge = flow / (GRATE_WEIR * grate.perimeter * grate.clogging);
  const velocity = flow / (GRATE_ORIFICE * grate.openArea * grate.clogging);
  return Math.max(cbrt(perEdge * perEdge), (velocity * velocity) / (2 * GRAVITY));
}

/** Head [m] at which weir and orifice give the same flow: C_o*A*sqrt(2*g) / (C_w*P). Same source. */
export function grateTransitionHead(perimeter: number, openArea: number): number {
  requirePositive({ perimeter, openArea });
  return (GRATE_ORIFICE * openArea * Math.sqrt(2 * GRAVITY)) / (GRATE_WEIR * perimeter);
}

/** Head over a grate at which check I1 is judged: one inch. Source: ours. */
export const ALLOWED_GRATE_HEAD = 1 * INCH;
