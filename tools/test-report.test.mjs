// @ts-check
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { inRoot } from './paths.mjs';
import { add, line, readPlaywright, readVitest } from './test-report.mjs';

let folder = '';
beforeEach(() => { folder = mkdtempSync(path.join(tmpdir(), 'yardfall-report-test-')); });
afterEach(() => { rmSync(folder, { recursive: true }); });

/** @param {object} report */
function written(report) {
  const file = path.join(folder, 'report.json');
  writeFileSync(file, JSON.stringify(report));
  return file;
}

const passed = { status: 'passed', fullName: 'adds' };

test('a failed test is named with its file and the beginning of its message, without colours and without the whole stack', () => {
  const message = '\u001B[31mAssertionError\u001B[39m: expected 1 to be 2\n\n- 2\n+ 1\n    at sum (/x/sum.ts:3:4)\n    at run (/x/run.ts:1:1)';
  const failed = { status: 'failed', fullName: 'sums of flows', failureMessages: [message] };
  const file = written({ testResults: [{ name: inRoot('packages', 'calc', 'sum.test.ts'), status: 'failed', assertionResults: [passed, failed, { status: 'pending', fullName: 'later' }] }] });
  const counts = readVitest(file, 1, 'unit');
  expect(line(counts)).toBe('1 passed, 1 failed, 1 skipped');
  expect(counts.broken).toEqual([`${path.join('packages', 'calc', 'sum.test.ts')} > sums of flows\n    AssertionError: expected 1 to be 2\n    - 2\n    + 1\n        at sum (/x/sum.ts:3:4)`]);
});

test('a file that did not load, a program that ended badly and one that wrote nothing are failures with a name', () => {
  const file = written({ testResults: [{ name: inRoot('tests', 'a.test.ts'), status: 'failed', message: 'Cannot find module', assertionResults: [] }] });
  expect(readVitest(file, 1, 'api')).toEqual({ passed: 0, failed: 1, skipped: 0, broken: [`${path.join('tests', 'a.test.ts')}\n    Cannot find module`] });
  const good = written({ testResults: [{ name: inRoot('tests', 'a.test.ts'), status: 'passed', assertionResults: [passed] }] });
  expect(readVitest(good, 0, 'api')).toEqual({ passed: 1, failed: 0, skipped: 0, broken: [] });
  expect(readVitest(good, 134, 'api')).toMatchObject({ passed: 1, failed: 1, broken: [expect.stringContaining('code 134')] });
  expect(readVitest(path.join(folder, 'none.json'), 9, 'api')).toMatchObject({ failed: 1, broken: [expect.stringContaining('api')] });
});

test('a failed browser test is named the same way, wherever its suite stands', () => {
  const spec = (/** @type {string} */ title, /** @type {string} */ status, /** @type {object[]} */ errors = []) => ({ title, file: 'job.spec.ts', tests: [{ status, results: [{ errors }] }] });
  const file = written({ suites: [{ specs: [spec('opens', 'expected')], suites: [{ specs: [spec('digs', 'unexpected', [{ message: 'Timed out\n    at x' }]), spec('later', 'skipped')] }] }], errors: [] });
  expect(readPlaywright(file, 1)).toEqual({ passed: 1, failed: 1, skipped: 1, broken: ['job.spec.ts > digs\n    Timed out\n        at x'] });
  expect(readPlaywright(written({ suites: [], errors: [{ message: 'no service' }] }), 1)).toMatchObject({ failed: 1, broken: ['outside of any browser test\n    no service', expect.stringContaining('code 1')] });
});

test('counts and names of two stages are added', () => {
  const one = { passed: 1, failed: 2, skipped: 3, broken: ['a', 'b'] };
  expect(add(one, { passed: 10, failed: 1, skipped: 0, broken: ['c'] })).toEqual({ passed: 11, failed: 3, skipped: 3, broken: ['a', 'b', 'c'] });
});
