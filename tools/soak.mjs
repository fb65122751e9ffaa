// @ts-check
// npm run soak: the property and fuzz tests of the numbers with their full counts, half of the cases on each of two processes.
// npm run soak -- fuzz --from=20000 goes on after the first 20,000 cases of each process.
import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, existsSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { run } from './complaint.mjs';
import { ensureInstalled } from './install.mjs';
import { inRoot, root } from './paths.mjs';
import { createSteps } from './steps.mjs';
import { add, readVitest, ZERO } from './test-report.mjs';

/** @typedef {import('./test-report.mjs').Counts} Counts */
/** @typedef {{ name: string, part: number, tests: number, failed: number, seconds: number }} Row */

const PARTS = 2;
/** A process that says nothing for so long hangs; a property says nothing until its last site. */
const SILENCE = 4 * 3_600_000;
const SOURCES = 'packages/calc/src';

/** How many cases of each process are known from an earlier run. @param {readonly string[]} words */
function knownCases(words) {
  const asked = words.find((word) => word.startsWith('--from='));
  return asked === undefined ? 0 : Number(asked.slice('--from='.length));
}

/** @param {readonly string[]} words parts of file names; all soak tests without any */
function soakTests(words) {
  const files = readdirSync(inRoot(SOURCES), { recursive: true, encoding: 'utf8' }).filter((name) => /(\.property|\.soak|fuzz)\.test\.ts$/.test(name));
  return files.filter((name) => words.length === 0 || words.some((word) => name.includes(word))).sort().map((name) => path.posix.join(SOURCES, name.replaceAll('\\', '/')));
}

/**
 * @param {number} part @param {number} known @param {readonly string[]} files @param {string} report @param {(text: string) => void} say
 * @returns {Promise<number>} its exit code; 1 when it had to be stopped
 */
function soak(part, known, files, report, say) {
  return new Promise((resolve) => {
    const args = [inRoot('node_modules/vitest/vitest.mjs'), 'run', '--project', 'unit', '--no-file-parallelism', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`, ...files];
    const child = spawn(process.execPath, args, { cwd: root, env: { ...process.env, YARDFALL_SOAK: `${part}/${PARTS}@${known}`, NO_COLOR: '1', FORCE_COLOR: '0' }, stdio: ['ignore', 'pipe', 'pipe'] });
    let last = '';
    /** @type {NodeJS.Timeout | undefined} */
    let clock;
    const wind = () => {
      clearTimeout(clock);
      clock = setTimeout(() => {
        say(`process ${part} hangs; the last that it said: ${last.trim()}`);
        child.kill('SIGKILL');
      }, SILENCE);
    };
    const take = (/** @type {Buffer} */ chunk) => {
      wind();
      for (const line of String(chunk).split('\n').filter((text) => text.trim() !== '')) {
        last = line;
        say(`[${part}] ${line}`);
      }
    };
    child.stdout.on('data', take);
    child.stderr.on('data', take);
    child.on('error', (error) => { say(`process ${part} did not start: ${error.message}`); });
    child.on('close', (code) => {
      clearTimeout(clock);
      resolve(code ?? 1);
    });
    wind();
  });
}

/** @param {string} report @param {number} part @returns {Row[]} */
function rowsOf(report, part) {
  if (!existsSync(report)) return [];
  const { testResults } = /** @type {{ testResults: { name: string, startTime: number, endTime: number, assertionResults: { status: string }[] }[] }} */ (JSON.parse(readFileSync(report, 'utf8')));
  return testResults.map(({ name, startTime, endTime, assertionResults }) => ({
    name: path.relative(inRoot(SOURCES), name), part, tests: assertionResults.length, failed: assertionResults.filter(({ status }) => status === 'failed').length, seconds: (endTime - startTime) / 1000,
  }));
}

await run(async () => {
  const steps = createSteps();
  await ensureInstalled(steps);
  const words = process.argv.slice(2);
  const files = soakTests(words.filter((word) => !word.startsWith('--')));
  const folder = mkdtempSync(path.join(tmpdir(), 'yardfall-soak-'));
  try {
    const parts = Array.from({ length: PARTS }, (_, index) => index + 1);
    const reports = parts.map((part) => path.join(folder, `${part}.json`));
    const codes = await Promise.all(parts.map((part) => soak(part, knownCases(words), files, /** @type {string} */ (reports[part - 1]), steps.say)));
    /** @type {Counts} */
    let total = ZERO;
    steps.say(`\n${'file'.padEnd(44)} process  tests  failed  seconds`);
    for (const [index, report] of reports.entries()) {
      total = add(total, readVitest(report, codes[index] ?? 1, 'soak'));
      for (const row of rowsOf(report, index + 1)) steps.say(`${row.name.padEnd(44)} ${String(row.part).padStart(7)}  ${String(row.tests).padStart(5)}  ${String(row.failed).padStart(6)}  ${row.seconds.toFixed(0).padStart(7)}`);
    }
    steps.say(`\nin ${steps.total()}\n${total.passed} passed, ${total.failed} failed`);
    return total.failed > 0 ? 1 : 0;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
