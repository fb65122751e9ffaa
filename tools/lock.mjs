// @ts-check
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { isAlive, pause } from './child.mjs';
import { codeOf } from './complaint.mjs';

/** @typedef {{ pid: number, program: string, note?: string }} Holder */

/** @param {string} file @returns {Holder | undefined} who holds the lock, if that process still runs the same program */
export function holderOf(file) {
  try {
    const holder = /** @type {Holder} */ (JSON.parse(readFileSync(file, 'utf8')));
    return holder.pid !== process.pid && isAlive(holder.pid) && runs(holder) ? holder : undefined;
  } catch (error) {
    if (codeOf(error) === 'ENOENT' || error instanceof SyntaxError) return undefined; // no lock, or one cut off while it was written
    throw error;
  }
}

/** Process numbers are given out again, most of all in containers. @param {Holder} holder */
function runs({ pid, program }) {
  if (process.platform !== 'linux') return true;
  try {
    return readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes(program);
  } catch (error) {
    if (codeOf(error) === 'ENOENT' || codeOf(error) === 'ESRCH') return false;
    throw error;
  }
}

/** @param {string} file @param {string} program part of our command line @param {string} [note] @returns {Holder | undefined} the holder when it is someone else */
export function take(file, program, note) {
  mkdirSync(path.dirname(file), { recursive: true });
  const text = JSON.stringify({ pid: process.pid, program, note });
  for (;;) {
    try {
      writeFileSync(file, text, { flag: 'wx' });
      return undefined;
    } catch (error) {
      if (codeOf(error) !== 'EEXIST') throw error;
      const holder = holderOf(file);
      if (holder) return holder;
      rmSync(file, { force: true });
    }
  }
}

/** @param {string} file */
export const release = (file) => rmSync(file, { force: true });

/**
 * One at a time; the others wait.
 * @template T
 * @param {string} file @param {string} program @param {() => Promise<T>} work @returns {Promise<T>}
 */
export async function withLock(file, program, work) {
  while (take(file, program)) await pause(200);
  try {
    return await work();
  } finally {
    release(file);
  }
}
