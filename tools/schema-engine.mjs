#!/usr/bin/env node
// @ts-check
// Stands in for Prisma's native schema engine (PRISMA_SCHEMA_ENGINE_BINARY): the same protocol on standard input and output, the
// same engine as WebAssembly from npm, over the driver adapter. Only the command-line program uses it; the service never does.
import { readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';
import pg from 'pg';
import { adapterFactory, closePools, connectionOf } from './schema-engine/adapter.mjs';
import { createMigration, evaluateDataLoss } from './schema-engine/answers.mjs';

/** @typedef {Record<string, (params?: unknown) => Promise<any>> & { free(): void }} Engine */

const argv = process.argv.slice(2);
const wasm = new URL('./', import.meta.resolve('@prisma/schema-engine-wasm/schema_engine_bg'));

/** @param {string} name */
const option = (name) => (argv.includes(name) ? argv[argv.indexOf(name) + 1] : undefined);

/** @type {{ url?: string }} */
const datasource = JSON.parse(option('--datasource') ?? '{}');

/** @param {'INFO' | 'ERROR'} level @param {Record<string, unknown>} fields */
function log(level, fields) {
  process.stderr.write(`${JSON.stringify({ timestamp: new Date().toISOString(), level, fields, target: 'schema_engine::logger' })}\n`);
}

/** @param {string | undefined} command */
async function commandLine(command) {
  const here = connectionOf(datasource.url ?? '');
  const client = new pg.Client(command === 'can-connect-to-database' ? here : connectionOf(datasource.url ?? '', 'postgres'));
  try {
    await client.connect();
    const name = client.escapeIdentifier(here.database ?? '');
    if (command === 'create-database') await createDatabase(client, name);
    if (command === 'drop-database') await client.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
    await client.end();
    return 0;
  } catch (error) {
    const { code, message } = /** @type {{ code?: string, message?: string }} */ (error);
    log('ERROR', { is_panic: false, error_code: code === '3D000' ? 'P1003' : code === '28P01' ? 'P1000' : 'P1001', message: message || code });
    return 1;
  }
}

/** @param {pg.Client} client @param {string} name quoted */
async function createDatabase(client, name) {
  try {
    await client.query(`CREATE DATABASE ${name}`);
  } catch (error) {
    const { code } = /** @type {{ code?: string }} */ (error);
    if (code !== '42P04' && code !== '23505') throw error; // otherwise another command was quicker, and it is there
  }
}

/** @returns {Promise<{ new: (options: unknown, log: (message: string) => void, factory: unknown) => Promise<Engine> }>} */
async function loadEngine() {
  const glue = await import('@prisma/schema-engine-wasm/schema_engine_bg');
  const bytes = readFileSync(fileURLToPath(new URL('schema_engine_bg.wasm', wasm)));
  const { instance } = await WebAssembly.instantiate(bytes, { './schema_engine_bg.js': glue });
  const exported = /** @type {any} */ (instance.exports);
  glue.__wbg_set_wasm(exported);
  exported.__wbindgen_start?.();
  return /** @type {any} */ (glue.SchemaEngine);
}

/** @param {Engine} engine @param {string} method @param {any} params */
async function answer(engine, method, params) {
  if (method === 'createMigration') return createMigration(engine, params);
  if (method === 'evaluateDataLoss') return evaluateDataLoss(engine, params);
  const name = method === 'getDatabaseVersion' ? 'version' : method;
  const call = engine[name];
  if (!call) throw new Error(`The schema engine has no method ${name}.`);
  return call.call(engine, params);
}

/** @param {unknown} thrown @param {any} factory */
function problem(thrown, factory) {
  const known = factory.errorRegistry?.lookupError?.(thrown)?.error; // the adapter's own error behind the engine's
  const { code, message, name } = /** @type {{ code?: string, message?: string, name?: string }} */ (known ?? thrown);
  return { code: 4466, message: 'An error happened. Check the data field for details.', data: { is_panic: name === 'RuntimeError', message: message ?? String(thrown), error_code: code && /^P\d/.test(code) ? code : null, meta: null } };
}

async function serve() {
  const SchemaEngine = await loadEngine();
  const files = argv.flatMap((word, i) => (word === '--datamodels' || word === '-d' ? [[argv[i + 1], readFileSync(argv[i + 1] ?? '', 'utf8')]] : []));
  // The command line also starts an engine that only compares files, with an empty address.
  const factory = bindMigrationAwareSqlAdapterFactory(/** @type {any} */ (adapterFactory(datasource.url || 'postgresql://localhost/none')));
  /** @param {Record<string, unknown>} message */
  const send = (message) => process.stdout.write(`${JSON.stringify({ jsonrpc: '2.0', ...message })}\n`);
  for await (const line of createInterface({ input: process.stdin })) {
    const { id, method, params } = line.trim() ? JSON.parse(line) : {};
    if (!method) continue; // an empty line, or the answer to our own `print`
    let engine;
    try {
      // one engine a request: a used one no longer opens a shadow database
      engine = await SchemaEngine.new({ datamodels: files.length ? files : undefined }, () => {}, factory);
      let result = (await answer(engine, method, params)) ?? null;
      if (method === 'diff' && result?.stdout != null) {
        send({ id: 1_000_000 + id, method: 'print', params: { content: result.stdout } });
        result = { exitCode: result.exitCode };
      }
      send({ id, result });
    } catch (thrown) {
      send({ id, error: problem(thrown, factory) });
    } finally {
      engine?.free();
      await closePools();
    }
  }
  return 0;
}

if (argv.includes('--version')) {
  const { version } = JSON.parse(readFileSync(new URL('package.json', wasm), 'utf8'));
  console.log(`schema-engine-wasm ${version}`);
} else {
  process.exit(await (argv.includes('cli') ? commandLine(argv[argv.indexOf('cli') + 1]) : serve()));
}
