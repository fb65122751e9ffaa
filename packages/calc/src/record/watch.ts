import type { LevelTable } from '../routing/levelTable.ts';

/** Two times over a sill are one event when the water was below it for less than this [min]. Source: usual separation of storms, common practice. */
export const EVENT_SEPARATION = 360;

/** What one part of a record, usually a calendar year, did in one low spot. */
export interface WatchedPart {
  readonly maxLevel: number;
  /** Events that began in this part and minutes over the sill, for each sill. */
  readonly events: readonly number[];
  readonly minutesOver: readonly number[];
}

/** Highest level of a low spot and times of water at its sills, kept as volumes so that the loop turns none into a level. */
export class Watch {
  private readonly storage: LevelTable;
  private readonly volumes: readonly number[];
  private readonly lowest: number;
  private readonly lastOver: number[];
  private events: number[];
  private minutesOver: number[];
  private most = 0;

  constructor(storage: LevelTable, sills: readonly number[]) {
    this.storage = storage;
    this.volumes = sills.map((level) => storage.volume(level));
    this.lowest = this.volumes.reduce((low, volume) => Math.min(low, volume), Infinity);
    this.lastOver = sills.map(() => -Infinity);
    this.events = sills.map(() => 0);
    this.minutesOver = sills.map(() => 0);
  }

  /** A volume [m3] at the end of a span of minutes. A sill at the very bottom is reached by the first water. */
  see(volume: number, minute: number, span: number): void {
    if (volume > this.most) this.most = volume;
    if (volume < this.lowest || volume === 0) return;
    for (let i = 0; i < this.volumes.length; i += 1) if (volume >= this.volumes[i]!) this.over(i, minute - span, minute);
  }

  /** A volume that falls evenly [m3/min] from `minute` on. */
  fall(volume: number, perMinute: number, minute: number, span: number): void {
    if (volume < this.lowest || volume === 0) return;
    for (let i = 0; i < this.volumes.length; i += 1) {
      const above = volume - this.volumes[i]!;
      if (above < 0) continue;
      this.over(i, minute, minute + (above < perMinute * span ? above / perMinute : span));
    }
  }

  private over(sill: number, from: number, to: number): void {
    if (from - this.lastOver[sill]! >= EVENT_SEPARATION) this.events[sill] = this.events[sill]! + 1;
    this.lastOver[sill] = to;
    this.minutesOver[sill] = this.minutesOver[sill]! + to - from;
  }

  /** Closes a part; the next one begins with the volume that stands now. */
  close(volume: number): WatchedPart {
    const part = { maxLevel: this.storage.level(this.most), events: this.events, minutesOver: this.minutesOver };
    this.events = this.volumes.map(() => 0);
    this.minutesOver = this.volumes.map(() => 0);
    this.most = volume;
    return part;
  }
}
