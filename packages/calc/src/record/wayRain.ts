import type { DesignDocument } from '../document/document.ts';
import { hourShares, wetSteps, type RainWay } from './disaggregate.ts';
import { yearStarts } from './quality.ts';
import type { RainRecord } from './rainRecord.ts';
import { RAIN_STEP, SurfaceRunoff, type ActiveRunoff } from './surfaceRunoff.ts';

/** A record in one way of sharing out its rain, turned into runoff a part at a time. */
export class WayRain {
  private readonly record: RainRecord;
  private readonly way: RainWay;
  private readonly shares: Float64Array | null;
  private readonly surface: SurfaceRunoff;

  constructor(document: DesignDocument, record: RainRecord, way: RainWay) {
    this.record = record;
    this.way = way;
    this.shares = way === 'alternatingBlock' ? hourShares(document.rain.table) : null;
    this.surface = new SurfaceRunoff(document, this.strongest());
  }

  /** Depth of the strongest five minutes [mm]. */
  private strongest(): number {
    let most = 0;
    for (const { from, to } of yearStarts(this.record)) {
      for (const depth of wetSteps(this.record, this.way, this.shares, from, to).depth) if (depth > most) most = depth;
    }
    return most;
  }

  /** Five-minute step at which a reading begins. */
  stepOf(reading: number): number {
    return (reading * this.record.step) / RAIN_STEP;
  }

  /** Runoff of the readings from `from` up to `to`; parts must follow each other. */
  part(from: number, to: number): ActiveRunoff {
    return this.surface.advance(wetSteps(this.record, this.way, this.shares, from, to), this.stepOf(to));
  }

  /** Rain that ran off less what has arrived or still stands on the surfaces, as a share of it. */
  get error(): number {
    const { excess, runoff } = this.surface.books;
    return excess > 0 ? Math.abs(excess - runoff - this.surface.stored) / excess : 0;
  }
}
