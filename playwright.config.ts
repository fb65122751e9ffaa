import { defineConfig } from '@playwright/test';
import { CHROMIUM_ARGS, findChromium } from './tools/chromium.mjs';
import { freePort } from './tools/ports.mjs';

// Each worker has a service and a demo company of its own, because the tests of one company follow each other.
// One leaves more than half of two processors idle: the whole run has two (E2E_WORKERS), a single file one.
// Chosen once by the process that reads this first; the workers inherit them.
process.env.E2E_PORTS ??= process.env.E2E_PORT ?? (await freePorts(Number(process.env.E2E_WORKERS ?? 1))).join(' ');
const ports = process.env.E2E_PORTS.split(' ');
const own = Number(process.env.TEST_PARALLEL_INDEX ?? 0);
process.env.E2E_PORT = ports[own] ?? '';
if (process.env.E2E_DATA_DIRS !== undefined) process.env.E2E_DATA_DIR = process.env.E2E_DATA_DIRS.split('\n')[own] ?? '';
const executablePath = findChromium();

async function freePorts(many: number): Promise<number[]> {
  const ports = new Set<number>();
  while (ports.size < many) ports.add(await freePort());
  return [...ports];
}

/** Begun last, one of them would run alone while the other worker waits. */
const long = /(fullDay|plan|together|wholeJob)\.spec\.ts$/;

export default defineConfig({
  testDir: 'tests/e2e',
  globalSetup: './tests/support/e2e.global.ts',
  outputDir: 'test-results',
  fullyParallel: false,
  workers: ports.length,
  forbidOnly: true,
  retries: 0,
  timeout: 120_000,
  expect: { timeout: 15_000 },
  reporter: [['list']],
  projects: [{ name: 'long', testMatch: long }, { name: 'short', testIgnore: long }],
  use: {
    baseURL: `http://127.0.0.1:${process.env.E2E_PORT}`,
    actionTimeout: 20_000,
    locale: 'en-US',
    serviceWorkers: 'allow',
    screenshot: 'only-on-failure',
    // Traced, a test copies every photo and page; `--trace retain-on-failure` for the one that fails.
    trace: 'off',
    launchOptions: { ...(executablePath === undefined ? {} : { executablePath }), args: CHROMIUM_ARGS },
  },
});
