import { HOUR } from '../common/constants.ts';
import type { Catchment } from '../document/document.ts';
import { bracketedRoot } from '../math/bracketedRoot.ts';
import { exp } from '../math/exp.ts';
import { curveNumberRunoff } from '../runoff/curveNumber.ts';
import { infiltrated, type GreenAmptSoil } from '../runoff/greenAmpt.ts';
import { hortonDepth, type HortonSoil } from '../runoff/horton.ts';

/** After so long without rain a surface has recovered whole [s]; in between it recovers toward that with this time constant. Source: ours. */
export const RECOVERED_AFTER = 24 * HOUR;
export const RECOVERY_TIME = 8 * HOUR;

/** What a surface and its soil have taken in a long record, as a depth that fades while it is dry. */
interface Soil {
  /** Rain on the soil [mm] in a time [s]; gives back what runs off [mm]. */
  take(depth: number, time: number): number;
  fade(share: number): void;
}

class Volumetric implements Soil {
  private readonly coefficient: number;
  constructor(coefficient: number) { this.coefficient = coefficient; }
  take(depth: number): number { return depth * this.coefficient; }
  fade(): void { /* a fixed share has no memory */ }
}

class CurveNumber implements Soil {
  private readonly curveNumber: number;
  private total = 0;
  private before = 0;
  constructor(curveNumber: number) { this.curveNumber = curveNumber; }
  take(depth: number): number {
    this.total += depth;
    const runoff = curveNumberRunoff(this.total, this.curveNumber);
    const part = runoff - this.before;
    this.before = runoff;
    return part;
  }
  fade(share: number): void {
    this.total *= share;
    this.before = curveNumberRunoff(this.total, this.curveNumber);
  }
}

class GreenAmpt implements Soil {
  private readonly soil: GreenAmptSoil;
  private depth = 0;
  constructor(soil: GreenAmptSoil) { this.soil = soil; }
  take(depth: number, time: number): number {
    const taken = infiltrated(this.soil, this.depth, depth / 1000 / time, time);
    this.depth += taken;
    return Math.max(0, depth - 1000 * taken);
  }
  fade(share: number): void { this.depth *= share; }
}

class Horton implements Soil {
  private readonly soil: HortonSoil;
  /** Time under water that would have taken as much [s]. */
  private time = 0;
  constructor(soil: HortonSoil) { this.soil = soil; }
  take(depth: number, time: number): number {
    const from = hortonDepth(this.soil, this.time);
    const could = hortonDepth(this.soil, this.time + time) - from;
    const supply = depth / 1000;
    if (supply >= could) {
      this.time += time;
      return Math.max(0, depth - 1000 * could);
    }
    this.time = bracketedRoot((t) => hortonDepth(this.soil, t) - from - supply, this.time, this.time + time, 1e-9 * time);
    return 0;
  }
  fade(share: number): void { this.time *= share; }
}

function soilOf({ loss, coefficient }: Catchment): Soil {
  switch (loss.method) {
    case 'volumetric': return new Volumetric(coefficient);
    case 'curveNumber': return new CurveNumber(loss.curveNumber);
    case 'greenAmpt': return new GreenAmpt({ conductivity: loss.conductivity, suctionDeficit: loss.suctionHead * loss.moistureDeficit });
    case 'horton': return new Horton({ initialRate: loss.initial, finalRate: loss.final, decay: loss.decay });
  }
}

/**
 * Losses of one surface through years of rain: depression storage first, then its loss method.
 *
 *   while dry: taken(t) = taken(0) * e^(-t/8 h);  after 24 dry hours: 0
 *
 * Source: methods as in a storm; recovery: ours, stated
 * Checked against: volumetricLoss, curveNumberExcess, greenAmptExcess, hortonExcess without a dry time; the recovery by hand
 */
export class LossStore {
  /** Rain that stands in the surface's own storage [mm]. */
  private kept = 0;
  private readonly capacity: number;
  private readonly soil: Soil;

  constructor(catchment: Catchment) {
    this.capacity = catchment.depressionStorage;
    this.soil = soilOf(catchment);
  }

  /** @returns what of the rain [mm] in a time [s] runs off [mm] */
  excess(depth: number, time: number): number {
    const room = this.capacity - this.kept;
    if (depth <= room) {
      this.kept += depth;
      return 0;
    }
    this.kept = this.capacity;
    return this.soil.take(depth - room, time);
  }

  /** Lets a dry time pass of which this share is left: recoveryShare. */
  fade(share: number): void {
    this.kept *= share;
    this.soil.fade(share);
  }
}

/** Share of what a surface has taken that is left after a dry time [s]. */
export function recoveryShare(dryTime: number): number {
  return dryTime >= RECOVERED_AFTER ? 0 : exp(-dryTime / RECOVERY_TIME);
}
