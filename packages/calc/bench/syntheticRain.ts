import { log } from '../src/math/log.ts';
import { seededRandom } from '../src/math/random.ts';
import { dayNumber } from '../src/record/calendar.ts';
import type { RainRecord } from '../src/record/rainRecord.ts';

const PER_DAY = 288;
const stormsPerYear = 90;
/** One storm in six is a short and strong one. */
const strongShare = 1 / 6;

/**
 * Invented five-minute rain: storms at random times, long weak ones and short strong ones, about 1100 mm a year, a reading in thirty wet.
 * The same seed gives the same rain.
 */
export function syntheticRain(years: number, seed = 20250101): RainRecord {
  const random = seededRandom(seed);
  const draw = (): number => -log(1 - random());
  const first = dayNumber(1991, 1, 1);
  const depths = new Float64Array((dayNumber(1991 + years, 1, 1) - first) * PER_DAY);
  const between = (365.25 * PER_DAY) / stormsPerYear;
  for (let at = Math.floor(between * draw()); at < depths.length;) {
    const strong = random() < strongShare;
    const length = strong ? 3 + Math.floor(6 * draw()) : 6 + Math.floor(36 * draw());
    const mean = (strong ? 1.6 : 0.22) * (0.3 + draw());
    for (let i = at; i < Math.min(at + length, depths.length); i += 1) depths[i] = Math.min(25, mean * draw());
    at += length + 1 + Math.floor(between * draw());
  }
  return {
    gauge: { id: '', name: 'Invented rain', latitude: null, longitude: null, distance: 0 }, step: 300, startDay: first, depths, accumulations: [], rejected: 0,
  };
}
