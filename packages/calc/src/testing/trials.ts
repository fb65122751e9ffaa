/** What happened in a long row of generated cases. */
export interface Trials {
  /** How often each outcome came. */
  readonly outcomes: Readonly<Record<string, number>>;
  readonly slowest: { readonly seed: number; readonly milliseconds: number };
}

const rest = (): Promise<void> => new Promise((resolve) => { setImmediate(resolve); });

/** So many faults end a row: more of them say nothing new. */
const mostFaults = 20;

/**
 * Tries one case for each seed. Cases that throw are told at the end, each with its seed, so that it can be run again alone; the others are tried all the same.
 * Now and then the machine gets a breath, and a soak says how far it is: what hangs is known by the last line.
 */
export async function tryAll(what: string, seeds: readonly number[], one: (seed: number) => string, told: boolean): Promise<Trials> {
  const outcomes: Record<string, number> = {};
  let slowest = { seed: 0, milliseconds: 0 };
  const faults: Error[] = [];
  for (const [index, seed] of seeds.entries()) {
    const start = performance.now();
    let outcome = '';
    try {
      outcome = one(seed);
    } catch (error) {
      outcome = 'fault';
      faults.push(new Error(`${what}, seed ${seed} (YARDFALL_SEED=${seed} runs it alone): ${error instanceof Error ? error.message : String(error)}`, { cause: error }));
      if (told) process.stdout.write(`${faults.at(-1)?.message ?? ''}\n`);
      if (faults.length >= mostFaults) break;
    }
    outcomes[outcome] = (outcomes[outcome] ?? 0) + 1;
    const milliseconds = performance.now() - start;
    if (milliseconds > slowest.milliseconds) slowest = { seed, milliseconds };
    if (index % 50 === 0) await rest();
    if (told && index % 500 === 0) process.stdout.write(`${what}: ${index} of ${seeds.length}, next seed ${seed + 1}\n`);
  }
  process.stdout.write(`${what}: ${Object.values(outcomes).reduce((sum, count) => sum + count, 0)} of ${seeds.length} cases ${JSON.stringify(outcomes)}, slowest seed ${slowest.seed} in ${Math.floor(slowest.milliseconds)} ms\n`);
  if (faults.length > 0) throw new Error(faults.map(({ message }) => message).join('\n'), { cause: faults[0] });
  return { outcomes, slowest };
}
