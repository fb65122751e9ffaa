import { contourLines, findLowSpots, groundCatchments, stageAreaOf, triangulateSurface, waterExtent } from '@yardfall/calc';
import type { SurfaceInput } from '@yardfall/calc';

/** Prints how long each step over a surveyed ground takes as the survey grows. Nothing is asserted: times belong to a machine. */
const rounds = 15;
const across = 40;

/** A lot with hollows and swells, its spots off the raster by a fixed pattern, a house and a breakline. */
function survey(count: number): SurfaceInput {
  const side = Math.floor(Math.sqrt(count));
  const step = across / side;
  const points = Array.from({ length: side * side }, (_, i) => {
    const x = ((i % side) + ((i * 37) % 17) / 40) * step;
    const y = (Math.floor(i / side) + ((i * 53) % 19) / 45) * step;
    const swell = Math.abs(((x / 9) % 2) - 1) + Math.abs(((y / 7) % 2) - 1);
    return { id: `S${i}`, x, y, level: 100 + 0.3 * swell + 0.01 * ((i * 29) % 7) - x / 200 };
  });
  const house = [[12.3, 12.1], [24.7, 12.1], [24.7, 20.9], [12.3, 20.9], [12.3, 12.1]].map(([x, y]) => ({ x: x ?? 0, y: y ?? 0 }));
  return { points, walls: [{ id: 'house', points: house }], breaklines: [{ id: 'curb', points: [{ x: 2.2, y: 33.3, level: 100.1 }, { x: 31.1, y: 36.6, level: 100 }] }] };
}

function print(name: string, count: number, run: () => void): void {
  const times = Array.from({ length: rounds }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  process.stdout.write(`${String(count).padStart(5)} spots  ${name.padEnd(16)} best ${(times[0] ?? 0).toFixed(2)} ms  median ${(times[Math.floor(rounds / 2)] ?? 0).toFixed(2)} ms\n`);
}

for (const count of [200, 800, 3200, 4900]) {
  const input = survey(count);
  const surface = triangulateSurface(input);
  const drainage = findLowSpots(surface);
  print('triangles', count, () => { triangulateSurface(input); });
  print('low spots', count, () => { findLowSpots(surface); });
  print('catchments', count, () => { groundCatchments(surface, drainage); });
  print('contours 0.05 m', count, () => { contourLines(surface, 0.05); });
  print('extents', count, () => { for (const spot of drainage.lowSpots) waterExtent(surface, spot, (spot.bottom.level + spot.topLevel) / 2); });
  print('stage tables', count, () => { for (const spot of drainage.lowSpots) if (spot.topLevel - spot.bottom.level > 0.003) stageAreaOf(surface, spot); });
}
