// @ts-check
// npm run bench: runs every bench of the engine and of the page, one after the other, prints one table and writes bench-results.json.
import { readdirSync, writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { ensureInstalled } from './install.mjs';
import { capture } from './child.mjs';
import { Complaint, run } from './complaint.mjs';
import { inRoot, root } from './paths.mjs';
import { createSteps } from './steps.mjs';

/** @typedef {{ bench: string, name: string, value: number, unit: string, goal: number | null }} Figure */

const FOLDERS = ['packages/calc/bench', 'tests/bench'];

/** @param {string} bench @param {string} text @returns {Figure[]} lines of JSON; others are remarks */
function figuresOf(bench, text) {
  return text.split('\n').filter((line) => line.startsWith('{')).map((line) => {
    const { name, value, unit, goal } = JSON.parse(line);
    if (typeof name !== 'string' || typeof value !== 'number' || typeof unit !== 'string') throw new Complaint(`${bench} printed a line that is no figure: ${line}`);
    return { bench, name, value, unit, goal: goal ?? null };
  });
}

/** @param {Figure} figure */
function lineOf({ name, value, unit, goal }) {
  const verdict = goal === null ? '' : value <= goal ? 'met' : `missed by ${((100 * (value - goal)) / goal).toFixed(0)} %`;
  return `${name.padEnd(64)} ${value.toPrecision(4).padStart(10)} ${unit.padEnd(10)} ${(goal === null ? '' : String(goal)).padStart(8)}  ${verdict}`;
}

await run(async () => {
  const steps = createSteps();
  await ensureInstalled(steps);
  const words = process.argv.slice(2);
  const files = FOLDERS.flatMap((folder) => readdirSync(inRoot(folder)).sort().map((name) => ({ folder, name })))
    .filter(({ name }) => name.endsWith('.bench.ts') && (words.length === 0 || words.some((word) => name.includes(word))));
  /** @type {Figure[]} */
  const figures = [];
  /** @type {string[]} */
  const broken = [];
  steps.say(`${'figure'.padEnd(64)} ${'value'.padStart(10)} ${'unit'.padEnd(10)} ${'at most'.padStart(8)}`);
  for (const { folder, name } of files) {
    const { code, output, stdout } = await capture(process.execPath, ['--conditions=development', '--import', '@oxc-node/core/register', `${folder}/${name}`], { cwd: root });
    const made = figuresOf(name.replace('.bench.ts', ''), stdout);
    for (const figure of made) steps.say(lineOf(figure));
    figures.push(...made);
    if (code !== 0 || made.length === 0) broken.push(`${name} ended with code ${code}\n${output.trim()}`);
  }
  const results = { machine: cpus()[0]?.model ?? '', cores: cpus().length, load: loadavg()[0], node: process.version, at: new Date().toISOString(), figures };
  writeFileSync(inRoot('bench-results.json'), `${JSON.stringify(results, null, 1)}\n`);
  for (const text of broken) steps.say(text);
  const goals = figures.filter(({ goal }) => goal !== null);
  steps.say(`\n${goals.filter(({ value, goal }) => value <= Number(goal)).length} of ${goals.length} goals met (${steps.total()}; load ${results.load?.toFixed(1)} on ${results.cores} cores)`);
  return broken.length > 0 ? 1 : 0;
});
