// @ts-check
import { existsSync, readFileSync } from 'node:fs';
import { capture } from './child.mjs';
import { Complaint, diskFull } from './complaint.mjs';
import { inRoot, needRoom, root } from './paths.mjs';

/** @typedef {{ packages: Record<string, { version?: string, optional?: boolean, devOptional?: boolean, link?: boolean }> }} Lock */

/**
 * Compares what npm wrote down about the last finished install with what the lock asks for: an install that was cut off
 * leaves no such note.
 * @param {Lock} wanted @param {Lock} installed
 */
export function matches(wanted, installed) {
  const asked = Object.entries(wanted.packages).filter(([place]) => place.includes('node_modules/'));
  const missing = asked.some(([place, { optional, devOptional, version }]) => {
    const found = installed.packages[place];
    return found ? found.version !== version : !optional && !devOptional;
  });
  const known = new Set(asked.map(([place]) => place));
  return !missing && Object.keys(installed.packages).every((place) => !place.includes('node_modules/') || known.has(place));
}

export function isInstalled() {
  const note = inRoot('node_modules', '.package-lock.json');
  if (!existsSync(note)) return false;
  const read = (/** @type {string} */ file) => /** @type {Lock} */ (JSON.parse(readFileSync(file, 'utf8')));
  try {
    return matches(read(inRoot('package-lock.json')), read(note));
  } catch (error) {
    if (error instanceof SyntaxError) return false; // a note cut off by a full disk or a crash
    throw error;
  }
}

/** npm's own program when npm started us, so that a machine with several gets the same one. @returns {[string, string[]]} */
function npm() {
  const program = process.env.npm_execpath;
  if (program && /npm-cli\.c?js$/.test(program)) return [process.execPath, [program]];
  return [process.platform === 'win32' ? 'npm.cmd' : 'npm', []];
}

/** @param {import('./steps.mjs').Steps} steps */
export async function ensureInstalled(steps) {
  checkNode();
  if (isInstalled()) return false;
  await steps.step('Installing packages (about half a minute, once)', async () => {
    needRoom(root, 1200);
    const [command, args] = npm();
    const { code, output } = await capture(command, [...args, 'ci', '--no-audit', '--no-fund', '--loglevel=error'], { cwd: root, shell: process.platform === 'win32' });
    if (code === 0) return;
    if (/ENOSPC|No space left/.test(output)) throw diskFull(root);
    if (code === 127) throw new Complaint('npm was not found: install Node.js with npm.');
    throw new Complaint(`npm ci did not succeed:\n${output.trim().split('\n').slice(-15).join('\n')}`);
  });
  return true;
}

export function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major < 20 || (major === 20 && minor < 19)) throw new Complaint(`Yardfall needs Node.js 20.19 or newer, and this is ${process.versions.node}.`);
}
