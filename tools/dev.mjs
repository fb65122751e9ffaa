// @ts-check
// npm run dev: the database, the API restarted on every change of its source, the web client by Vite.
import { spawn } from 'node:child_process';
import path from 'node:path';
import { ensureClient } from './build.mjs';
import { pause } from './child.mjs';
import { run } from './complaint.mjs';
import { ensureInstalled } from './install.mjs';
import { dataFolder, inRoot, makeDataFolder, root } from './paths.mjs';
import { needPort, portFrom } from './ports.mjs';
import { apiEnvironment, openDatabase } from './service.mjs';
import { createSteps } from './steps.mjs';

const steps = createSteps();
const host = '127.0.0.1';

/** @param {string[]} args @param {NodeJS.ProcessEnv} env @param {string} [cwd] */
const program = (args, env, cwd = root) => spawn(process.execPath, args, { cwd, env, stdio: 'inherit', detached: true });

/** @param {import('node:child_process').ChildProcess} child */
async function end(child) {
  if (child.exitCode !== null || child.signalCode !== null) return;
  const ended = new Promise((resolve) => child.once('exit', resolve));
  if (child.pid) process.kill(-child.pid, 'SIGTERM'); // the watcher and what it started
  await Promise.race([ended, pause(10_000)]);
}

await run(async () => {
  const apiPort = portFrom(process.env.PORT, 3000);
  const webPort = Number(process.env.WEB_PORT ?? 5173);
  const dataDir = process.env.YARDFALL_DATA ? dataFolder() : path.join(dataFolder(), 'dev');
  await needPort(apiPort, host);
  await needPort(webPort, host);
  await ensureInstalled(steps);
  await ensureClient(steps);
  makeDataFolder(dataDir);
  const database = await openDatabase(steps, dataDir);
  const origin = `http://${host}:${webPort}`;
  const env = { ...apiEnvironment(database, { host, port: apiPort, dataDir }), NODE_ENV: 'development', PUBLIC_URL: process.env.PUBLIC_URL ?? origin };
  const children = [
    program(['--watch', '--watch-preserve-output', '--conditions=development', '--import', '@oxc-node/core/register', inRoot('apps/api/src/main.ts')], env, inRoot('apps/api')), // the loader takes the decorators' setting from the tsconfig of its folder
    program([inRoot('node_modules/vite/bin/vite.js'), inRoot('apps/web')], { ...process.env, API_URL: `http://${host}:${apiPort}`, WEB_PORT: String(webPort) }),
  ];
  steps.say(`Web client at ${origin}, API at http://${host}:${apiPort}; Ctrl-C stops both.`);
  await new Promise((resolve) => {
    for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) process.on(signal, resolve);
    for (const child of children) child.on('exit', resolve);
  });
  await Promise.all(children.map(end));
  await database.postgres?.stop();
});
