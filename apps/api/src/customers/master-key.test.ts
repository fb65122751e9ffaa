import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readMasterKey } from './master-key.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'yardfall-key-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true });
});

test('the first start makes a key that only its owner may read, and the next start finds it', () => {
  const first = readMasterKey(undefined, join(folder, 'new'));
  expect(first).toHaveLength(32);
  expect(readMasterKey('', join(folder, 'new'))).toEqual(first);
  expect(statSync(join(folder, 'new', 'master.key')).mode & 0o077).toBe(0);
});

test('a key from the environment is used and nothing is written', () => {
  expect(readMasterKey('ab'.repeat(32), folder)).toEqual(new Uint8Array(32).fill(0xab));
  expect(() => readFileSync(join(folder, 'master.key'))).toThrow();
});

test('a key of another length is refused by name', () => {
  expect(() => readMasterKey('too short', folder)).toThrow(/SECRET_KEY/);
});
