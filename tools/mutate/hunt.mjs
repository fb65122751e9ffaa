// @ts-check
// Tries every mutant of a folder. A thread that does not come back is ended and replaced.
import { Worker } from 'node:worker_threads';

/** @typedef {import('./instrument.mjs').Mutant} Mutant */
/** @typedef {import('./bundle.mjs').Script} Script */
/** @typedef {import('./worker.mjs').Seen} Seen */
/** @typedef {Mutant & { noticedBy: string | null, met: boolean }} Tried */

/** Milliseconds for a mutant beside twenty times what its examples take; the guard of the loops ends most that hang long before. */
const PATIENCE = 60_000;

class Thread {
  /** @param {readonly Script[]} scripts */
  constructor(scripts) {
    this.scripts = scripts;
    this.worker = this.fresh();
  }

  fresh() {
    const worker = new Worker(new URL('worker.mjs', import.meta.url), { workerData: this.scripts });
    worker.setMaxListeners(0);
    return worker;
  }

  /** @template T @param {object} question @param {T} late @param {number} patience @returns {Promise<T>} */
  ask(question, late, patience) {
    return new Promise((resolve, reject) => {
      const { worker } = this;
      const done = (/** @type {() => void} */ then) => {
        clearTimeout(timer);
        worker.removeAllListeners('message');
        worker.removeAllListeners('error');
        then();
      };
      const timer = setTimeout(() => {
        void worker.terminate();
        this.worker = this.fresh();
        done(() => { resolve(late); });
      }, patience);
      worker.on('message', (/** @type {T} */ answer) => { done(() => { resolve(answer); }); });
      worker.on('error', (error) => {
        this.worker = this.fresh();
        done(() => { reject(error); });
      });
      worker.postMessage(question);
    });
  }

  async end() {
    await this.worker.terminate();
  }
}

/** Examples that take longer than this [ms of processor time] are asked last. */
const QUICK = 100;
/** Time for the examples that a change meets which is listed as equivalent [ms of processor time]: the quickest ones. */
const SHORT = 200;

/** @param {Seen[]} seen @param {Mutant} mutant @param {string} last name of the example that noticed the mutant before, which is asked first */
function wantedFor(seen, mutant, last) {
  const cost = (/** @type {Seen} */ { name, time }) => (name === last && time < QUICK ? -1 : time);
  return seen.filter(({ hits }) => hits.has(mutant.id)).sort((a, b) => cost(a) - cost(b));
}

/** @param {Seen[]} examples */
function quickOnes(examples) {
  let sum = 0;
  return examples.filter(({ time }) => { sum += time; return time < QUICK && sum < SHORT; });
}

/** @param {Seen[]} examples */
const patienceFor = (examples) => PATIENCE + 20 * examples.reduce((sum, { time }) => sum + time, 0);

/**
 * @param {readonly Mutant[]} mutants @param {readonly Script[]} scripts
 * @param {(mutant: Mutant) => boolean} quickOnly whether a mutant meets quick examples only
 * @param {(tried: Tried) => void} told
 * @returns {Promise<Tried[]>}
 */
export async function hunt(mutants, scripts, quickOnly, told) {
  const thread = new Thread(scripts);
  try {
    const whole = await thread.ask({ kind: 'all' }, null, 20 * PATIENCE);
    const { seen, failed, most } = /** @type {{ seen: Seen[], failed: string[], most: number }} */ (/** @type {unknown} */ (whole ?? { seen: [], failed: ['they do not end'], most: 0 }));
    if (failed.length > 0) throw new Error(`the examples fail without any mutant:\n${failed.join('\n')}`);
    /** @type {Tried[]} */
    const tried = [];
    let last = '';
    for (const mutant of mutants) {
      const all = wantedFor(seen, mutant, last);
      const examples = quickOnly(mutant) ? quickOnes(all) : all;
      const wanted = examples.map(({ script, name, rounds }) => ({ script, name, rounds }));
      const { answer } = await thread.ask({ kind: 'one', mutant: mutant.id, wanted, most }, { answer: 'nothing: it does not end' }, patienceFor(examples));
      if (answer !== null) last = answer;
      tried.push({ ...mutant, noticedBy: answer, met: all.length > 0 });
      told(/** @type {Tried} */ (tried[tried.length - 1]));
    }
    return tried;
  } finally {
    await thread.end();
  }
}
