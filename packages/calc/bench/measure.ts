/** One line of the bench: `npm run bench` gathers them into a table. `goal` is the most that the value should be; null when it only informs. */
export function report(name: string, value: number, unit: string, goal: number | null = null): void {
  process.stdout.write(`${JSON.stringify({ name, value, unit, goal })}\n`);
}

/** Best and median time of some rounds [ms], after two that only warm up. */
export function timed(run: () => void, rounds = 15): { readonly best: number; readonly median: number } {
  run();
  run();
  const times = Array.from({ length: rounds }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return { best: times[0] ?? 0, median: times[Math.floor(rounds / 2)] ?? 0 };
}
