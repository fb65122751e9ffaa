// @ts-check
// A stamp says from which content something was built: touched files, checkouts and copies of the folder do not fool it.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { root } from './paths.mjs';

/** @param {string} place a file or folder @returns {string[]} its files, sorted */
function filesOf(place) {
  if (!existsSync(place)) return [];
  if (statSync(place).isFile()) return [place];
  return readdirSync(place, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.join(entry.parentPath, entry.name))
    .sort();
}

/**
 * @param {string[]} places files and folders, relative to the checkout
 * @param {{ without?: RegExp, extra?: string[] }} [options] extra: texts that belong to the content, such as other stamps
 */
export function contentStamp(places, { without = /\.test(-d)?\.tsx?$/, extra = [] } = {}) {
  const hash = createHash('sha256');
  for (const text of extra) hash.update(`${text}\0`);
  for (const file of places.flatMap((place) => filesOf(path.join(root, place)))) {
    if (without.test(file)) continue;
    hash.update(`${path.relative(root, file)}\0`).update(readFileSync(file)).update('\0');
  }
  return hash.digest('hex');
}

/** @param {string} file @param {string} stamp */
export const hasStamp = (file, stamp) => existsSync(file) && readFileSync(file, 'utf8') === stamp;

/** @param {string} file @param {string} stamp */
export const putStamp = (file, stamp) => writeFileSync(file, stamp);
