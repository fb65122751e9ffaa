import { GALLON, GALLON_PER_MINUTE } from '../common/constants.ts';
import type { LowSpot } from '../document/document.ts';
import { levelAtVolume, stageCurve } from '../levels/stageVolume.ts';
import { spillFlow } from './pondStorage.ts';

/** The contractor's hand calculation: one store, a pump of constant flow, no losses on the way. */
export interface HandModel {
  readonly lowSpot: LowSpot;
  readonly sillLevel: number;
  /** Sum of coefficient times area [m2]. */
  readonly runoffArea: number;
  /** Constant pumped flow [m3/s], 0 for none. */
  readonly pumpFlow: number;
  /** Store in basin and pipes that fills before the low spot does [m3]. */
  readonly store: number;
  /** Rain of each block [mm] and its length [s]. */
  readonly blocks: readonly number[];
  readonly block: number;
  readonly outage?: readonly [number, number];
}

/** Store in basin and pipes: 45 gal. Source: the trade's worked example. */
export const handStore = 45 * GALLON;
export const handPumpFlow = (gallonsPerMinute: number): number => gallonsPerMinute * GALLON_PER_MINUTE;

const handStep = 5;

export interface HandResult {
  readonly maxLevel: number;
  readonly freeboard: number;
}

/**
 * Routes a storm through the hand model: dV/dt = C i A - Q_pump - spill over the rim.
 * Volumes by the frustum rule, the highest area kept above the last level, spill 3.0 L h^1.5 (US).
 *
 * @returns highest level [m] and freeboard at the sill [m]
 * Limits: no head on the pump, no losses, no infiltration: it shows the storage argument and nothing finer
 * Source: level-pool routing, Chow, Maidment and Mays 1988 section 8.2, by explicit steps of 5 s
 */
export function handModel(model: HandModel): HandResult {
  const curve = stageCurve(model.lowSpot.stageArea);
  const { rimLevel, spillWidth } = model.lowSpot;
  let stored = 0;
  let level = curve.levels[0]!;
  let maxLevel = level;
  const perBlock = Math.floor(model.block / handStep + 0.5);
  const dt = model.block / perBlock;
  model.blocks.forEach((rain, index) => {
    const inflow = (model.runoffArea * rain) / 1000 / model.block;
    // An empty store that the pump keeps empty stays so for the whole block.
    if (stored === 0 && model.outage === undefined && inflow <= model.pumpFlow) return;
    for (let k = 0; k < perBlock; k += 1) {
      const time = index * model.block + k * dt;
      const powered = model.outage === undefined || time < model.outage[0] || time >= model.outage[1];
      const out = (powered ? model.pumpFlow : 0) + spillFlow(level, rimLevel, spillWidth);
      stored = Math.max(0, stored + (inflow - out) * dt);
      level = levelAtVolume(curve, stored - model.store);
      if (level > maxLevel) maxLevel = level;
    }
  });
  return { maxLevel, freeboard: model.sillLevel - maxLevel };
}

/** Worst freeboard over every start of an outage of this length, starts a minute apart around the peak. */
export function handOutage(model: HandModel, duration: number): number {
  const peak = Math.floor(model.blocks.length / 2) * model.block;
  let worst = Infinity;
  for (let from = peak - duration - 600; from <= peak + 900; from += 60) {
    worst = Math.min(worst, handModel({ ...model, outage: [from, from + duration] }).freeboard);
  }
  return worst;
}
