import { seededRandom } from '../../math/random.ts';

/** Draws from one seed: the same seed gives the same site on every machine. */
export class Draw {
  private readonly random: () => number;

  constructor(seed: number) {
    this.random = seededRandom(seed);
    // Seeds beside one another start alike; a few draws later they have parted.
    for (let i = 0; i < 4; i += 1) this.random();
  }

  /** A number of six decimals, as a level book or a tape would give at most; rates and flows have more. */
  between(low: number, high: number): number {
    const scale = high < 0.01 && high > 0 ? 1e10 : 1e6;
    return Math.floor((low + this.random() * (high - low)) * scale + 0.5) / scale;
  }

  /** A whole number, both ends included. */
  whole(low: number, high: number): number {
    return low + Math.floor(this.random() * (high - low + 1));
  }

  chance(share: number): boolean {
    return this.random() < share;
  }

  pick<T>(list: readonly T[]): T {
    if (list.length === 0) throw new Error('nothing to pick from');
    return list[Math.floor(this.random() * list.length)] as T;
  }
}

/** Sums of typed levels keep six decimals. */
export const rounded = (value: number): number => Math.floor(value * 1e6 + 0.5) / 1e6;
