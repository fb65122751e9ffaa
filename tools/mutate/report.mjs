// @ts-check
// What a hunt found, written beside the package: killed, survived, and equivalent with the reason why nobody can notice.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { inRoot } from '../paths.mjs';

/** @typedef {import('./hunt.mjs').Tried} Tried */
/** @typedef {import('./instrument.mjs').Mutant} Mutant */
/** @typedef {{ file: string, code: string, from: string, to: string, reason: string }} Equivalent `from` or `to` may be "*": any change there */
/** @typedef {{ file: string, mutants: number, killed: number, equivalent: number, survived: number, score: number }} FileScore */
/** @typedef {{ folder: string, files: FileScore[], survivors: Tried[], unused: Equivalent[] }} Report */

const FOLDER = inRoot('packages/calc/mutation');

/** @returns {Equivalent[]} */
export function loadEquivalents() {
  const file = path.join(FOLDER, 'equivalents.json');
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : [];
}

/** @param {Equivalent} known @param {Mutant} mutant */
const fits = (known, mutant) => known.file === mutant.file && known.code === mutant.code && (known.from === '*' || known.from === mutant.from) && (known.to === '*' || known.to === mutant.to);

/** @param {readonly Equivalent[]} equivalents @returns {(mutant: Mutant) => boolean} */
export const listedIn = (equivalents) => (mutant) => equivalents.some((known) => fits(known, mutant));

/** @param {string} folder @param {readonly Tried[]} tried @param {readonly Equivalent[]} equivalents @returns {Report} */
export function summary(folder, tried, equivalents) {
  const alive = tried.filter(({ noticedBy }) => noticedBy === null);
  const isEquivalent = listedIn(equivalents);
  const names = [...new Set(tried.map(({ file }) => file))].sort();
  const files = names.map((file) => {
    const mutants = tried.filter((item) => item.file === file);
    const killed = mutants.filter(({ noticedBy }) => noticedBy !== null).length;
    const equivalent = alive.filter((item) => item.file === file && isEquivalent(item)).length;
    const counted = mutants.length - equivalent;
    return { file, mutants: mutants.length, killed, equivalent, survived: counted - killed, score: counted === 0 ? 100 : Math.floor((1000 * killed) / counted) / 10 };
  });
  const unused = equivalents.filter((known) => names.includes(known.file) && !alive.some((mutant) => fits(known, mutant)));
  return { folder, files, survivors: alive.filter((mutant) => !isEquivalent(mutant)), unused };
}

/** @param {readonly Tried[]} survivors @returns {string[]} each line of code once, below it what may be changed unnoticed */
export function survivorLines(survivors) {
  let last = '';
  return survivors.flatMap(({ file, line, code, from, to, met }) => {
    const place = `  ${file}:${line}  ${code}`;
    const change = `      ${met ? '' : '(no example comes here) '}${from.slice(0, 100)}  ->  ${to === '' ? '(gone)' : to.slice(0, 100)}`;
    const lines = place === last ? [change] : [place, change];
    last = place;
    return lines;
  });
}

/** @param {Report} report */
export function table({ files, unused }) {
  const rows = files.map(({ file, mutants, killed, equivalent, survived, score }) => `  ${file.padEnd(36)} ${String(mutants).padStart(5)} mutants ${String(killed).padStart(5)} killed ${String(equivalent).padStart(4)} equivalent ${String(survived).padStart(4)} survived  ${score} %`);
  return [...rows, ...unused.map(({ file, code, from, to }) => `  listed as equivalent, but killed or gone: ${file}: ${code}: ${from} -> ${to}`)].join('\n');
}

/** @param {Report} report */
export function write({ folder, files, survivors }) {
  mkdirSync(FOLDER, { recursive: true });
  const left = survivors.map(({ file, line, code, from, to }) => ({ file, line, code, from, to }));
  writeFileSync(path.join(FOLDER, `${folder}.json`), `${JSON.stringify({ folder, files, survivors: left }, null, 1)}\n`);
}
