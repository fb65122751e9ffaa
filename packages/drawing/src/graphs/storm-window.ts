import type { StormRun } from '@yardfall/calc';

/** Time of the heaviest rain [s of the run], the middle of its block. */
export function peakTime(run: StormRun): number {
  const most = Math.max(...run.intensity);
  const first = run.intensity.indexOf(most);
  let last = first;
  while (run.intensity[last + 1] === most) last += 1;
  return run.start + ((first + last + 1) / 2) * run.step;
}

const shortest = 3600;
const longest = 4 * 3600;

/** The time about the peak in which the rain is strong, the pond wet or the pump running; one to four hours. */
export function windowOf(run: StormRun): [from: number, to: number] {
  const peak = peakTime(run);
  const strong = Math.max(...run.intensity) * 0.15;
  const dry = Math.min(...run.pondLevel) + 0.002;
  const moving = run.intensity.flatMap((value, index) => (value > strong || (run.pondLevel[index] ?? 0) > dry ? [run.start + index * run.step] : []));
  const near = moving.filter((time) => Math.abs(time - peak) <= longest / 2);
  const end = run.start + (run.intensity.length - 1) * run.step;
  const from = Math.min(...near, peak - shortest / 2) - 300;
  const to = Math.max(...near, peak + shortest / 2) + 600;
  // Both ends are samples, so that a slider over the samples begins and ends with the graph.
  const sample = (time: number): number => run.start + Math.round((Math.min(Math.max(time, run.start), end) - run.start) / run.step) * run.step;
  return [sample(from), sample(to)];
}

/** Water of the section at one moment of a run. */
export function waterAt(run: StormRun, time: number): { pond: number | null; basin: number | null } {
  const index = Math.min(Math.max(Math.round((time - run.start) / run.step), 0), run.pondLevel.length - 1);
  return { pond: run.pondLevel[index] ?? null, basin: run.basinLevel[index] ?? null };
}
