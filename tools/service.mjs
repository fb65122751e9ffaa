// @ts-check
// The parts of a running service: the database (embedded or given), its roles and tables, the API process.
import path from 'node:path';
import { endOrphan, startApi } from './api-process.mjs';
import { pause } from './child.mjs';
import { Complaint, diskFull } from './complaint.mjs';
import { inRoot } from './paths.mjs';
import { portTaken } from './ports.mjs';

const READY_TIME = 180_000;

/** @typedef {import('./steps.mjs').Steps} Steps */
/** @typedef {import('./embedded-postgres.mjs').EmbeddedPostgres} EmbeddedPostgres */
/** @typedef {{ ownerUrl: string, appUrl: string, postgres: EmbeddedPostgres | undefined }} Database */
/** @typedef {{ host: string, port: number, dataDir: string }} Place */

// Loaded late: on a fresh clone this file is read before the packages that those two need are installed.
const migrations = () => import('./migrations.mjs');
const roles = () => import('./database-roles.mjs');

/** @param {Steps} steps @param {string} dataDir @param {{ throwaway?: boolean }} [options] @returns {Promise<Database>} */
export async function openDatabase(steps, dataDir, options = {}) {
  const given = process.env.DATABASE_URL;
  if (!given) {
    const { startPostgres } = await import('./embedded-postgres.mjs');
    const postgres = await steps.step('Starting the database', () => startPostgres({ dataDir, ...options }));
    return { postgres, ...(await prepare(steps, postgres.url())) };
  }
  const owner = process.env.MIGRATE_DATABASE_URL;
  const { connect } = await roles();
  await steps.step(`Connecting to ${new URL((await roles()).parseDatabaseUrl(owner ?? given)).host}`, async () => (await connect(owner ?? given)).end());
  return { postgres: undefined, ...(await prepare(steps, owner ?? given, owner ? given : undefined)) };
}

/** @param {Steps} steps @param {string} ownerUrl @param {string} [appUrl] given when its role is looked after by someone else */
async function prepare(steps, ownerUrl, appUrl) {
  const { applyMigrations } = await migrations();
  const { ensureAppRole } = await roles();
  const app = appUrl ?? (await ensureAppRole(ownerUrl));
  await steps.step('Bringing the tables up to date', () => applyMigrations(ownerUrl, inRoot('prisma', 'migrations')));
  return { ownerUrl, appUrl: app };
}

/** @param {Database} database @param {Place} place @param {NodeJS.ProcessEnv} [more] @returns {NodeJS.ProcessEnv} */
export function apiEnvironment({ ownerUrl, appUrl, postgres }, { host, port, dataDir }, more = {}) {
  const demo = process.env.DEMO ?? (postgres ? '1' : '0');
  return { NODE_ENV: 'production', ...process.env, DATABASE_URL: appUrl, MIGRATE_DATABASE_URL: ownerUrl, HOST: host, PORT: String(port), DATA_DIR: dataDir, WEB_DIST: inRoot('apps', 'web', 'dist'), DEMO: demo, ...more };
}

/** Where to reach a server that listens on every address. @param {Place} place */
export function addressOf({ host, port }) {
  const name = host === '0.0.0.0' || host === '::' ? '127.0.0.1' : host;
  return `http://${name.includes(':') ? `[${name}]` : name}:${port}`;
}

/** @param {string} url @returns {Promise<boolean>} */
export async function isReady(url) {
  try {
    const response = await fetch(`${url}/ready`, { signal: AbortSignal.timeout(5000) });
    await response.arrayBuffer();
    return response.ok;
  } catch {
    return false; // not listening yet
  }
}

/**
 * @param {{ database: Database, place: Place, onLine?: (line: import('./api-process.mjs').LogLine) => void, onDeath?: (how: string) => void, env?: NodeJS.ProcessEnv }} options
 * @returns {Promise<import('./api-process.mjs').ApiProcess>} once it answers
 */
export async function runApi({ database, place, onLine = () => {}, onDeath = () => {}, env }) {
  await endOrphan(place.dataDir);
  const api = startApi({ dataDir: place.dataDir, env: apiEnvironment(database, place, env), onLine, onDeath });
  try {
    await waitForReady(api, place);
  } catch (error) {
    await api.stop();
    throw error;
  }
  api.keepRunning();
  return api;
}

/** @param {import('./api-process.mjs').ApiProcess} api @param {Place} place */
async function waitForReady(api, place) {
  for (const end = Date.now() + READY_TIME; !(await isReady(addressOf(place))); await pause(50)) {
    const over = api.ended();
    if (over === undefined && Date.now() < end) continue;
    const said = api.tail();
    if (/EADDRINUSE/.test(said)) throw portTaken(place.port, place.host);
    if (/ENOSPC|No space left/.test(said)) throw diskFull(place.dataDir);
    const why = over === undefined ? 'did not become ready' : `ended with ${over} before it was ready`;
    throw new Complaint(`The API ${why}; its last lines (all are in ${path.join(place.dataDir, 'api.log')}):\n${said.split('\n').slice(-12).join('\n')}`);
  }
}
