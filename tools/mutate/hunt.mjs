// @ts-check
// Tries every mutant of a folder. A thread that does not come back is ended and replaced.
import { Worker } from 'node:worker_threads';

/** @typedef {import('./instrument.mjs').Mutant} Mutant */
/** @typedef {import('./bundle.mjs').Script} Script */
/** @typedef {import('./worker.mjs').Seen} Seen */
/** @typedef {Mutant & { noticedBy: string | null, met: boolean }} Tried */

/** A busy machine is slow; the guard of the loops ends most mutants long before. */
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

/**
 * @param {readonly Mutant[]} mutants @param {readonly Script[]} scripts @param {(tried: Tried) => void} told
 * @returns {Promise<Tried[]>}
 */
export async function hunt(mutants, scripts, told) {
  const thread = new Thread(scripts);
  try {
    const whole = await thread.ask({ kind: 'all' }, null, 20 * PATIENCE);
    const { seen, failed, most } = /** @type {{ seen: Seen[], failed: string[], most: number }} */ (/** @type {unknown} */ (whole ?? { seen: [], failed: ['they do not end'], most: 0 }));
    if (failed.length > 0) throw new Error(`the examples fail without any mutant:\n${failed.join('\n')}`);
    /** @type {Tried[]} */
    const tried = [];
    for (const mutant of mutants) {
      const wanted = seen.filter(({ hits }) => hits.includes(mutant.id)).sort((a, b) => a.time - b.time).map(({ script, name, rounds }) => ({ script, name, rounds }));
      const { answer } = await thread.ask({ kind: 'one', mutant: mutant.id, wanted, most }, { answer: 'nothing: it does not end' }, PATIENCE);
      tried.push({ ...mutant, noticedBy: answer, met: wanted.length > 0 });
      told(/** @type {Tried} */ (tried[tried.length - 1]));
    }
    return tried;
  } finally {
    await thread.end();
  }
}
