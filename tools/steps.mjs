// @ts-check
import { performance } from 'node:perf_hooks';

/** @param {number} milliseconds */
export function duration(milliseconds) {
  return milliseconds < 60_000
    ? `${(milliseconds / 1000).toFixed(1)} s`
    : `${Math.floor(milliseconds / 60_000)} min ${Math.round((milliseconds % 60_000) / 1000)} s`;
}

/**
 * Says what is being done and how long it took.
 * @param {NodeJS.WritableStream} [out]
 */
export function createSteps(out = process.stdout) {
  const began = performance.now();
  return {
    /** @param {string} text */
    say: (text) => out.write(`${text}\n`),
    total: () => duration(performance.now() - began),
    /**
     * @template T
     * @param {string} label
     * @param {() => Promise<T> | T} work
     * @returns {Promise<T>}
     */
    async step(label, work) {
      const start = performance.now();
      out.write(`  ${label} ... `);
      try {
        const result = await work();
        out.write(`${duration(performance.now() - start)}\n`);
        return result;
      } catch (error) {
        out.write(`failed after ${duration(performance.now() - start)}\n`);
        throw error;
      }
    },
  };
}

/** @typedef {ReturnType<typeof createSteps>} Steps */
