// @ts-check
// Reads what the test programs wrote. A program that ends badly counts as a failed test even when every test it named passed.
import { existsSync, readFileSync } from 'node:fs';

/** @typedef {{ passed: number, failed: number, skipped: number }} Counts */

/** @type {Counts} */
export const ZERO = Object.freeze({ passed: 0, failed: 0, skipped: 0 });

/** @param {Counts} a @param {Counts} b @returns {Counts} */
export const add = (a, b) => ({ passed: a.passed + b.passed, failed: a.failed + b.failed, skipped: a.skipped + b.skipped });

/** @param {Counts} counts */
export const line = ({ passed, failed, skipped }) => `${passed} passed, ${failed} failed, ${skipped} skipped`;

/** @param {Counts} counts @param {number} code @returns {Counts} */
const withExitCode = (counts, code) => (code !== 0 && counts.failed === 0 ? { ...counts, failed: 1 } : counts);

/** @typedef {{ status: string, assertionResults: { status: string }[] }} VitestFile */

/** @param {string} file @param {number} code @param {string} project @returns {Counts} */
export function readVitest(file, code, project) {
  if (!existsSync(file)) {
    console.error(`The ${project} tests wrote no report.`);
    return { passed: 0, failed: 1, skipped: 0 };
  }
  const { testResults } = /** @type {{ testResults: VitestFile[] }} */ (JSON.parse(readFileSync(file, 'utf8')));
  return withExitCode(testResults.map(ofFile).reduce(add, ZERO), code);
}

/** @param {VitestFile} file @returns {Counts} */
function ofFile({ status, assertionResults }) {
  const passed = assertionResults.filter((test) => test.status === 'passed').length;
  const failed = assertionResults.filter((test) => test.status === 'failed').length;
  const counts = { passed, failed, skipped: assertionResults.length - passed - failed };
  return status === 'failed' && failed === 0 ? { ...counts, failed: 1 } : counts; // a file that did not load, or whose hook failed
}

/** @typedef {{ suites?: Suite[], specs?: { tests: { status: string }[] }[] }} Suite */

/** @param {Suite} suite @returns {string[]} */
const statuses = (suite) => [...(suite.specs ?? []).flatMap((spec) => spec.tests.map((test) => test.status)), ...(suite.suites ?? []).flatMap(statuses)];

/** @param {string} file @returns {Suite} */
const readSuite = (file) => (existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : {});

/** @param {string} file @param {number} code @returns {Counts} */
export function readPlaywright(file, code) {
  const all = statuses(readSuite(file));
  const passed = all.filter((status) => status === 'expected').length;
  const skipped = all.filter((status) => status === 'skipped').length;
  return withExitCode({ passed, failed: all.length - passed - skipped, skipped }, code);
}

/** @param {string} file a report of --list @returns {Counts} */
export const listed = (file) => ({ passed: 0, failed: 0, skipped: statuses(readSuite(file)).length });
