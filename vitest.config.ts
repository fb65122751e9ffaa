import { defineConfig } from 'vitest/config';

const conditions = { resolve: { conditions: ['development'] }, ssr: { resolve: { conditions: ['development'] } } };

export default defineConfig({
  ...conditions,
  test: {
    projects: [
      {
        ...conditions,
        test: {
          name: 'unit',
          include: ['packages/*/src/**/*.test.{ts,tsx}', 'apps/*/src/**/*.test.{ts,tsx}', 'tools/**/*.test.mjs'],
        },
      },
      {
        ...conditions,
        test: {
          name: 'api',
          include: ['tests/{api,authorization,contract,database}/**/*.test.ts'],
          globalSetup: ['tests/support/database.global.ts'],
          testTimeout: 30_000,
          hookTimeout: 60_000,
        },
      },
      {
        ...conditions,
        test: {
          name: 'reliability',
          include: ['tests/reliability/**/*.test.ts'],
          fileParallelism: false, // each file runs a whole service of its own
          testTimeout: 600_000,
          hookTimeout: 240_000,
        },
      },
    ],
  },
});
