// @ts-check
// Reads what the test programs wrote. A program that ends badly counts as a failed test even when every test it named passed.
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { stripVTControlCharacters } from 'node:util';
import { root } from './paths.mjs';

/** Of a failed test: so many lines of what it said, each so long. */
const SAID = 6;
const WIDTH = 300;

/** @typedef {{ passed: number, failed: number, skipped: number, broken: readonly string[] }} Counts broken: each failed test with the beginning of what it said */

/** @type {Counts} */
export const ZERO = Object.freeze({ passed: 0, failed: 0, skipped: 0, broken: [] });

/** @param {Counts} a @param {Counts} b @returns {Counts} */
export const add = (a, b) => ({ passed: a.passed + b.passed, failed: a.failed + b.failed, skipped: a.skipped + b.skipped, broken: [...a.broken, ...b.broken] });

/** @param {Counts} counts */
export const line = ({ passed, failed, skipped }) => `${passed} passed, ${failed} failed, ${skipped} skipped`;

/** @param {Counts} counts @param {number} code @returns {Counts} */
const withExitCode = (counts, code) => (code !== 0 && counts.failed === 0 ? { ...counts, failed: 1, broken: [`ended with code ${code} although no test of its own failed`] } : counts);

/** @param {string} name @param {string | undefined} message colours and all @returns {string} */
function failure(name, message) {
  const lines = stripVTControlCharacters(message ?? '').split('\n').map((text) => text.trimEnd()).filter((text) => text !== '');
  const own = lines.findIndex((text) => /^\s+at /.test(text)); // where the stack begins
  const first = lines.slice(0, own < 0 ? SAID : Math.min(own + 1, SAID));
  return [name, ...first.map((text) => `    ${text.length > WIDTH ? `${text.slice(0, WIDTH)}…` : text}`)].join('\n');
}

/** @typedef {{ name: string, status: string, message?: string, assertionResults: { status: string, fullName: string, failureMessages?: string[] | null }[] }} VitestFile */

/** @param {string} file @param {number} code @param {string} project @returns {Counts} */
export function readVitest(file, code, project) {
  if (!existsSync(file)) {
    console.error(`The ${project} tests wrote no report.`);
    return { passed: 0, failed: 1, skipped: 0, broken: [`the ${project} tests wrote no report (code ${code})`] };
  }
  const { testResults } = /** @type {{ testResults: VitestFile[] }} */ (JSON.parse(readFileSync(file, 'utf8')));
  return withExitCode(testResults.map(ofFile).reduce(add, ZERO), code);
}

/** @param {VitestFile} file @returns {Counts} */
function ofFile({ name, status, message, assertionResults }) {
  const where = path.relative(root, name);
  const passed = assertionResults.filter((test) => test.status === 'passed').length;
  const failures = assertionResults.filter((test) => test.status === 'failed');
  const broken = failures.map((test) => failure(`${where} > ${test.fullName}`, test.failureMessages?.join('\n')));
  const counts = { passed, failed: broken.length, skipped: assertionResults.length - passed - broken.length, broken };
  return status === 'failed' && broken.length === 0 ? { ...counts, failed: 1, broken: [failure(where, message)] } : counts; // a file that did not load, or whose hook failed
}

/** @typedef {{ status: string, results?: { errors?: { message?: string }[] }[] }} BrowserTest */
/** @typedef {{ title?: string, file?: string, suites?: Suite[], specs?: { title: string, file?: string, tests: BrowserTest[] }[], errors?: { message?: string }[] }} Suite */

/** @param {Suite} suite @returns {{ name: string, test: BrowserTest }[]} */
const testsOf = (suite) => [
  ...(suite.specs ?? []).flatMap(({ title, file, tests }) => tests.map((test) => ({ name: `${file ?? ''} > ${title}`, test }))),
  ...(suite.suites ?? []).flatMap(testsOf),
];

/** @param {string} file @returns {Suite} */
const readSuite = (file) => (existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : {});

/** @param {string} file @param {number} code @returns {Counts} */
export function readPlaywright(file, code) {
  const suite = readSuite(file);
  const all = testsOf(suite);
  const passed = all.filter(({ test }) => test.status === 'expected').length;
  const skipped = all.filter(({ test }) => test.status === 'skipped').length;
  const broken = all.filter(({ test }) => test.status !== 'expected' && test.status !== 'skipped')
    .map(({ name, test }) => failure(name, (test.results ?? []).flatMap(({ errors }) => errors ?? []).map(({ message }) => message ?? '').join('\n')));
  const outside = (suite.errors ?? []).map(({ message }) => failure('outside of any browser test', message));
  const counts = withExitCode({ passed, failed: broken.length, skipped, broken }, code);
  return { ...counts, broken: [...outside, ...counts.broken] };
}

/** @param {string} file a report of --list @returns {Counts} */
export const listed = (file) => ({ ...ZERO, skipped: testsOf(readSuite(file)).length });
