// @ts-check
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { codeOf } from './complaint.mjs';

/**
 * Runs a program to its end and keeps what it printed.
 * @param {string} command
 * @param {string[]} args
 * @param {import('node:child_process').SpawnOptions & { onOutput?: (text: string) => void, input?: string }} [options]
 * @returns {Promise<{ code: number, output: string, stdout: string }>} code 127 when it could not be started
 */
export function capture(command, args, { onOutput, input, ...options } = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, args, { ...options, stdio: ['pipe', 'pipe', 'pipe'] });
    let output = '';
    let stdout = '';
    /** @param {Buffer} chunk */
    const take = (chunk) => {
      output += chunk;
      onOutput?.(String(chunk));
    };
    child.stdout?.on('data', (chunk) => { stdout += chunk; take(chunk); });
    child.stderr?.on('data', take);
    child.on('error', (error) => resolve({ code: 127, output: `${output}${error.message}`, stdout }));
    child.on('close', (code, signal) => resolve({ code: code ?? (signal ? 128 : 1), output, stdout }));
    child.stdin?.on('error', () => {}); // a program that ended without reading its input says so by its exit code
    child.stdin?.end(input);
  });
}

/**
 * Runs a program that talks to the terminal itself.
 * @param {string} command @param {string[]} args @param {import('node:child_process').SpawnOptions} [options]
 * @returns {Promise<number>} its exit code
 */
export function passThrough(command, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, { stdio: 'inherit', ...options });
    child.on('error', reject);
    child.on('close', (code) => resolve(code ?? 1));
  });
}

/** @param {number} milliseconds */
export const pause = (milliseconds) => new Promise((resolve) => setTimeout(resolve, milliseconds));

/** A zombie, dead but not yet reaped by its parent, does not count. @param {number} pid */
export function isAlive(pid) {
  try {
    process.kill(pid, 0);
  } catch (error) {
    return codeOf(error) === 'EPERM';
  }
  if (process.platform !== 'linux') return true;
  try {
    return !/\) [ZX] /.test(readFileSync(`/proc/${pid}/stat`, 'utf8'));
  } catch {
    return false; // it ended between the two looks
  }
}

/** @param {number} pid @param {number} milliseconds @returns {Promise<boolean>} whether it ended in time */
export async function endsWithin(pid, milliseconds) {
  for (const end = Date.now() + milliseconds; Date.now() < end; await pause(50)) if (!isAlive(pid)) return true;
  return !isAlive(pid);
}
