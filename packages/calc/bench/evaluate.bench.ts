import { readFileSync } from 'node:fs';
import { evaluate } from '@yardfall/calc';
import type { DesignDocument } from '@yardfall/calc';

/** Prints how long one evaluation takes, best and median of some rounds. Nothing is asserted: times belong to a machine. */
const rounds = 15;
const sites = ['tern-hollow', 'ridgeback', 'sallow-bend'] as const;

function timeOf(run: () => void): { readonly best: number; readonly median: number } {
  const times = Array.from({ length: rounds }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return { best: times[0] ?? 0, median: times[Math.floor(rounds / 2)] ?? 0 };
}

for (const name of sites) {
  const document = JSON.parse(readFileSync(new URL(`../../../prisma/seed/sites/${name}.json`, import.meta.url), 'utf8')) as DesignDocument;
  for (const band of [false, true]) {
    const { best, median } = timeOf(() => { evaluate(document, { band }); });
    process.stdout.write(`${name.padEnd(12)} band ${band ? 'yes' : 'no '}  best ${best.toFixed(1)} ms  median ${median.toFixed(1)} ms\n`);
  }
}
