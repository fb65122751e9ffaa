// @ts-check
// npm test: every kind of test, from a fresh clone; the last line counts them all.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ensureBuilt } from './build.mjs';
import { findChromium, NO_CHROMIUM } from './chromium.mjs';
import { passThrough } from './child.mjs';
import { run } from './complaint.mjs';
import { ensureInstalled } from './install.mjs';
import { inRoot, root } from './paths.mjs';
import { add, line, listed, readPlaywright, readVitest, ZERO } from './test-report.mjs';
import { createSteps } from './steps.mjs';

/** @typedef {import('./test-report.mjs').Counts} Counts */

const steps = createSteps();
const reports = mkdtempSync(path.join(tmpdir(), 'yardfall-report-'));
const environment = { ...process.env, CI: process.env.CI ?? '', FORCE_COLOR: process.stdout.isTTY ? '1' : '0' };
for (const name of ['DATABASE_URL', 'MIGRATE_DATABASE_URL', 'DEMO', 'PORT', 'HOST', 'npm_lifecycle_event']) delete (/** @type {NodeJS.ProcessEnv} */ (environment)[name]);

/** @param {string} name @param {readonly string[]} more projects that run with it @returns {Promise<Counts>} */
async function vitest(name, more = []) {
  const report = path.join(reports, `${name}.json`);
  const code = await passThrough(process.execPath, [inRoot('node_modules/vitest/vitest.mjs'), 'run', ...[name, ...more].flatMap((project) => ['--project', project]), '--reporter=default', '--reporter=json', `--outputFile.json=${report}`], { cwd: root, env: environment });
  return readVitest(report, code, name);
}

const PLAYWRIGHT = inRoot('node_modules/@playwright/test/cli.js');

/** @returns {Promise<Counts>} */
async function browser() {
  const report = path.join(reports, 'browser.json');
  // One browser test keeps less than one processor at work.
  const env = { ...environment, E2E_WORKERS: process.env.E2E_WORKERS ?? '2', PLAYWRIGHT_JSON_OUTPUT_NAME: report };
  if (!findChromium()) {
    await passThrough(process.execPath, [PLAYWRIGHT, 'test', '--list', '--reporter=json'], { cwd: root, env, stdio: ['ignore', 'ignore', 'inherit'] });
    const counts = listed(report);
    const required = process.env.REQUIRE_BROWSER === '1';
    steps.say(`The ${counts.skipped} browser tests ${required ? 'FAIL' : 'are skipped'}: ${NO_CHROMIUM}.`);
    return required ? { ...ZERO, failed: Math.max(1, counts.skipped), broken: [`all browser tests: ${NO_CHROMIUM}`] } : counts;
  }
  const code = await passThrough(process.execPath, [PLAYWRIGHT, 'test', '--reporter=list,json'], { cwd: root, env });
  return readPlaywright(report, code);
}

/** @param {string} title @param {() => Promise<Counts>} work @returns {Promise<Counts>} */
async function stage(title, work) {
  const time = createSteps();
  steps.say(`\n== ${title}`);
  const counts = await work();
  const empty = counts.passed + counts.failed + counts.skipped === 0;
  steps.say(`== ${title}: ${line(counts)} in ${time.total()}${empty ? ' (it reported no test, which is a failure)' : ''}`);
  const broken = (empty ? [...counts.broken, 'it reported no test'] : counts.broken).map((text) => `${title}: ${text}`);
  return { ...counts, failed: empty ? 1 : counts.failed, broken };
}

await run(async () => {
  try {
    await ensureInstalled(steps);
    await ensureBuilt(steps);
    let total = ZERO;
    total = add(total, await stage('unit tests', () => vitest('unit', ['page'])));
    total = add(total, await stage('API and database tests', () => vitest('api')));
    total = add(total, await stage('reliability tests', () => vitest('reliability')));
    total = add(total, await stage('browser tests', browser));
    steps.say(`\nAll stages in ${steps.total()}`);
    for (const text of total.broken) steps.say(`FAILED ${text}`); // here as well, because the end of a log is what is kept and read
    steps.say(line(total));
    return total.failed > 0 ? 1 : 0;
  } finally {
    rmSync(reports, { recursive: true, force: true });
  }
});
