// @ts-check
import { chmodSync, existsSync, mkdirSync, statfsSync } from 'node:fs';
import path from 'node:path';
import { diskFull } from './complaint.mjs';

export const root = path.resolve(import.meta.dirname, '..');

/** @param {string[]} parts */
export const inRoot = (...parts) => path.join(root, ...parts);

/** The folder for everything that a run leaves behind; YARDFALL_DATA moves it. */
export function dataFolder() {
  return path.resolve(root, process.env.YARDFALL_DATA || '.yardfall');
}

/** Others may pass through (the database runs as another user when started by root) but not look around. @param {string} dir */
export function makeDataFolder(dir) {
  if (existsSync(dir)) return;
  mkdirSync(dir, { recursive: true });
  chmodSync(dir, 0o711);
}

/** @param {string} dir @param {number} megabytes */
export function needRoom(dir, megabytes) {
  let existing = dir;
  while (!existsSync(existing)) existing = path.dirname(existing);
  const { bavail, bsize } = statfsSync(existing);
  if (bavail * bsize < megabytes * 1024 * 1024) throw diskFull(dir);
}
