/** What happened in a long row of generated cases. */
export interface Trials {
  /** How often each outcome came. */
  readonly outcomes: Readonly<Record<string, number>>;
  readonly slowest: { readonly seed: number; readonly milliseconds: number };
}

const rest = (): Promise<void> => new Promise((resolve) => { setImmediate(resolve); });

/**
 * Tries one case for each seed. A case that throws ends the row with its seed in the message, so that it can be run again alone.
 * Now and then the machine gets a breath, and a soak says how far it is: what hangs is known by the last line.
 */
export async function tryAll(what: string, seeds: readonly number[], one: (seed: number) => string, told: boolean): Promise<Trials> {
  const outcomes: Record<string, number> = {};
  let slowest = { seed: 0, milliseconds: 0 };
  for (const [index, seed] of seeds.entries()) {
    const start = performance.now();
    let outcome = '';
    try {
      outcome = one(seed);
    } catch (error) {
      throw new Error(`${what}, seed ${seed} (YARDFALL_SEED=${seed} runs it alone): ${error instanceof Error ? error.message : String(error)}`, { cause: error });
    }
    outcomes[outcome] = (outcomes[outcome] ?? 0) + 1;
    const milliseconds = performance.now() - start;
    if (milliseconds > slowest.milliseconds) slowest = { seed, milliseconds };
    if (index % 50 === 0) await rest();
    if (told && index % 500 === 0) process.stdout.write(`${what}: ${index} of ${seeds.length}, next seed ${seed + 1}\n`);
  }
  process.stdout.write(`${what}: ${seeds.length} cases ${JSON.stringify(outcomes)}, slowest seed ${slowest.seed} in ${Math.floor(slowest.milliseconds)} ms\n`);
  return { outcomes, slowest };
}
