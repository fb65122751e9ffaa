import { defineConfig } from '@playwright/test';
import { CHROMIUM_ARGS, findChromium } from './tools/chromium.mjs';
import { freePort } from './tools/ports.mjs';

// Chosen once by the process that reads this first; the workers inherit it.
process.env.E2E_PORT ??= String(await freePort());
const executablePath = findChromium();

export default defineConfig({
  testDir: 'tests/e2e',
  globalSetup: './tests/support/e2e.global.ts',
  outputDir: 'test-results',
  fullyParallel: false,
  workers: 1, // they share one service and one demo company
  forbidOnly: true,
  retries: 0,
  timeout: 120_000,
  expect: { timeout: 15_000 },
  reporter: [['list']],
  use: {
    baseURL: `http://127.0.0.1:${process.env.E2E_PORT}`,
    actionTimeout: 20_000,
    locale: 'en-US',
    serviceWorkers: 'allow',
    screenshot: 'only-on-failure',
    trace: 'retain-on-failure',
    launchOptions: { ...(executablePath === undefined ? {} : { executablePath }), args: CHROMIUM_ARGS },
  },
});
