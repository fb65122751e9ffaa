import path from 'node:path';
import { defineConfig } from 'prisma/config';

// Prisma's command line fetches a native engine from the internet; the stand-in runs the same engine from the npm package.
// PRISMA_SCHEMA_ENGINE_BINARY set from outside wins, so a machine with the native one can use it.
process.env.PRISMA_SCHEMA_ENGINE_BINARY ??= path.join(import.meta.dirname, 'tools/schema-engine.mjs');
process.env.PRISMA_HIDE_UPDATE_MESSAGE ??= '1';
process.env.CHECKPOINT_DISABLE ??= '1';

export default defineConfig({
  schema: 'prisma/schema.prisma',
  migrations: { path: 'prisma/migrations' },
  datasource: { url: process.env.MIGRATE_DATABASE_URL || process.env.DATABASE_URL || 'postgresql://yardfall_owner@127.0.0.1:5432/yardfall' },
});
