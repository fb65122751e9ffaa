// @ts-check
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { inRoot } from '../paths.mjs';
import { mutantsOf, SOURCES } from './bundle.mjs';
import { FOLDERS } from './folders.mjs';
import { loadEquivalents } from './report.mjs';

/** Of the changes that somebody could notice, the share that an example must [%]. */
const LEAST = 90;

/** @typedef {{ folder: string, files: import('./report.mjs').FileScore[], survivors: unknown[] }} Scores */

/** @param {string} folder @returns {Scores} */
const scoresOf = (folder) => {
  const file = inRoot('packages/calc/mutation', `${folder}.json`);
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : { folder, files: [], survivors: [] };
};

describe.each(FOLDERS)('the scores of %s', (folder) => {
  const { files, survivors } = scoresOf(folder);
  it('name every file that holds something to change: after work on the folder run npm run mutate', () => {
    expect(files.map(({ file }) => file)).toEqual([...new Set(mutantsOf(folder, []).mutants.map(({ file }) => file))].sort());
  });
  it('leave no change unnoticed', () => {
    expect(survivors).toEqual([]);
    expect(files.filter(({ survived, score }) => survived > 0 || score < LEAST)).toEqual([]);
  });
  it('are those of their counts', () => {
    expect(files.filter(({ mutants, killed, equivalent, survived }) => killed + equivalent + survived !== mutants)).toEqual([]);
  });
});

it('every change that nobody can notice is listed once, with a reason, in a file that is there', () => {
  const listed = loadEquivalents();
  expect(listed.filter(({ file, reason }) => reason.trim().length < 10 || !existsSync(path.join(SOURCES, file)))).toEqual([]);
  const keys = listed.map(({ file, code, from, to }) => [file, code, from, to].join('\n'));
  expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([]);
});
