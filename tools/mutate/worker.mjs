// @ts-check
// A thread that runs examples: first all of them as they are, then those that meet a mutant, until one of them fails.
import { parentPort, workerData } from 'node:worker_threads';
import { carryOut, collect, compiled } from './examples.mjs';

/** @typedef {import('./bundle.mjs').Script} Script */
/** @typedef {{ script: number, name: string, time: number, rounds: number, hits: Set<number> }} Seen an example with its processor time [ms], that of its file's own loading counted, the rounds of its loops and the mutants that it meets */
/** @typedef {{ script: number, name: string, rounds: number }} Wanted */

const port = parentPort;
if (port === null) throw new Error('this file runs as a thread');
const scripts = /** @type {Script[]} */ (workerData).map(compiled);

/** Rounds of loops that no example needs; a mutant that comes so far does not end. What fills a list meanwhile must not fill the memory. */
let allowed = Infinity;
const tenfold = (/** @type {number} */ needed) => needed * 10 + 2_000_000;
let rounds = 0;
let hung = false;
const guard = () => {
  rounds += 1;
  if (rounds > allowed) {
    hung = true;
    throw new Error('it does not end');
  }
};

/** @returns {Promise<{ seen: Seen[], failed: string[], most: number }>} */
async function asTheyAre() {
  /** @type {Seen[]} */
  const seen = [];
  /** @type {string[]} */
  const failed = [];
  let most = 0;
  for (const [index, script] of scripts.entries()) {
    /** @type {Set<number>} */
    let hits = new Set();
    rounds = 0;
    const begin = process.cpuUsage();
    const examples = collect(script, (id) => { hits.add(id); return false; }, guard);
    const loading = process.cpuUsage(begin).user / 1000;
    const always = hits;
    most = Math.max(most, rounds);
    for (const example of examples) {
      hits = new Set();
      rounds = 0;
      const start = process.cpuUsage();
      try {
        await carryOut(example);
      } catch (error) {
        failed.push(`${example.name}: ${error instanceof Error ? error.message : String(error)}`);
      }
      seen.push({ script: index, name: example.name, time: loading + process.cpuUsage(start).user / 1000, rounds, hits: new Set([...always, ...hits]) });
    }
  }
  return { seen, failed, most };
}

/**
 * Quick examples first, whatever file they stand in: most mutants are noticed at once.
 * @param {number} mutant @param {readonly Wanted[]} wanted @param {number} most rounds while the examples are collected
 * @returns {Promise<string | null>} what noticed it
 */
async function noticedBy(mutant, wanted, most) {
  const on = (/** @type {number} */ id) => id === mutant;
  /** @type {Map<number, ReturnType<typeof collect>>} */
  const collected = new Map();
  hung = false;
  let at = '';
  try {
    for (const { script, name, rounds: needed } of wanted) {
      at = 'collecting the examples';
      rounds = 0;
      allowed = tenfold(most);
      const examples = collected.get(script) ?? collect(/** @type {import('node:vm').Script} */ (scripts[script]), on, guard);
      collected.set(script, examples);
      at = name;
      rounds = 0;
      allowed = tenfold(needed);
      for (const example of examples) if (example.name === name) await carryOut(example);
      if (hung) return `${name} (does not end)`;
    }
  } catch {
    return at; // to fail is what an example is there for
  }
  return null;
}

port.on('message', (/** @type {{ kind: 'all' } | { kind: 'one', mutant: number, wanted: Wanted[], most: number }} */ message) => {
  if (message.kind === 'all') void asTheyAre().then((answer) => { port.postMessage(answer); });
  else void noticedBy(message.mutant, message.wanted, message.most).then((answer) => { port.postMessage({ answer }); });
});
