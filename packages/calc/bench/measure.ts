/** One line of the bench: `npm run bench` gathers them into a table. `goal` is the most that the value should be; null when it only informs. */
export function report(name: string, value: number, unit: string, goal: number | null = null): void {
  process.stdout.write(`${JSON.stringify({ name, value, unit, goal })}\n`);
}

/** Best and median time of some rounds, and the median of the processor's time, which a busy machine draws out less [ms]; after two that only warm up. */
export function timed(run: () => void, rounds = 15): { readonly best: number; readonly median: number; readonly processor: number } {
  run();
  run();
  const walls: number[] = [];
  const processors: number[] = [];
  for (let i = 0; i < rounds; i += 1) {
    const start = performance.now();
    const used = process.cpuUsage();
    run();
    processors.push(process.cpuUsage(used).user / 1000);
    walls.push(performance.now() - start);
  }
  walls.sort((a, b) => a - b);
  processors.sort((a, b) => a - b);
  const middle = Math.floor(rounds / 2);
  return { best: walls[0] ?? 0, median: walls[middle] ?? 0, processor: processors[middle] ?? 0 };
}
