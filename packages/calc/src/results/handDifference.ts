/**
 * Freeboard at the first sill by the hand model and by the coupled model, and the difference in steps [m]:
 * hand + store + pumpHead + phase + response = coupled.
 */
export interface HandDifference {
  readonly returnPeriod: number;
  readonly hand: number;
  /** The real store between the on level and the low spot in place of 45 gal. */
  readonly store: number;
  /** The pump's flow by its basin level, and the levels that drive the pipes. */
  readonly pumpHead: number;
  /** The pump that starts and stops in place of one that runs above its on level. */
  readonly phase: number;
  /** Surfaces that keep and delay the rain. */
  readonly response: number;
  readonly coupled: number;
}
