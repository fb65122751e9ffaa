import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { LongFirst } from './tools/test-order.mjs';

const conditions = { resolve: { conditions: ['development'] }, ssr: { resolve: { conditions: ['development'] } } };

export default defineConfig({
  ...conditions,
  test: {
    maxWorkers: Math.max(2, availableParallelism() - 1), // the default leaves one of two cores without work
    sequence: { sequencer: LongFirst },
    projects: [
      {
        ...conditions,
        test: {
          name: 'unit',
          isolate: false, // the files of a worker share its modules: a quarter of the work was loading them again for each file
          include: ['packages/*/src/**/*.test.{ts,tsx}', 'apps/api/src/**/*.test.ts', 'tools/**/*.test.mjs'],
          // A limit is for what hangs: no test asserts a time, and a busy machine may take many times as long.
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      {
        ...conditions,
        // A page's modules hold what one phone holds (its outbox, its store, who is there): each file is a phone of its own.
        test: { name: 'page', include: ['apps/web/{src,plugins}/**/*.test.{ts,tsx}'], testTimeout: 120_000, hookTimeout: 120_000 },
      },
      {
        ...conditions,
        test: {
          name: 'api',
          isolate: false, // each file has a database and a service of its own, and loads neither the API nor the engine again
          include: ['tests/{api,authorization,contract,database}/**/*.test.ts'],
          globalSetup: ['tests/support/database.global.ts'],
          testTimeout: 120_000,
          hookTimeout: 300_000,
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
