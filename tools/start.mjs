// @ts-check
// npm start: from a fresh clone to a running service. Only Node.js itself is needed before the packages are installed, so what
// needs a package is loaded after that.
import path from 'node:path';
import { endOrphan } from './api-process.mjs';
import { ensureBuilt, SERVICE } from './build.mjs';
import { pause } from './child.mjs';
import { Complaint, run } from './complaint.mjs';
import { checkNode, ensureInstalled } from './install.mjs';
import { release, take } from './lock.mjs';
import { dataFolder, makeDataFolder } from './paths.mjs';
import { needPort, portFrom } from './ports.mjs';
import { addressOf, openDatabase, runApi } from './service.mjs';
import { createSteps } from './steps.mjs';

const steps = createSteps();
const place = { host: process.env.HOST || '127.0.0.1', port: 3000, dataDir: dataFolder() };
const lockFile = path.join(place.dataDir, 'start.lock');

/** @type {(() => Promise<void>)[]} what must be stopped, in the order of starting */
const running = [];
let stopping = false;

/** @param {string} why */
async function stop(why) {
  if (stopping) return;
  stopping = true;
  steps.say(`\n${why}`);
  let code = 0;
  for (const end of running.reverse()) {
    try {
      await end();
    } catch (error) {
      console.error(error);
      code = 1;
    }
  }
  steps.say('Stopped.');
  process.exit(code);
}

function listenForStop() {
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) process.on(signal, () => void stop('Stopping: open requests are finished first.'));
  const parent = process.ppid;
  // npm passes no signal on when it is itself killed: whoever it leaves behind ends in good order
  if (process.env.npm_lifecycle_event === 'start') setInterval(() => { if (process.ppid !== parent) void stop('npm is gone: stopping.'); }, 1000).unref();
}

/** @param {import('./service.mjs').Database} database */
function watchDatabase({ postgres }) {
  if (!postgres) return;
  void (async () => {
    for (;;) {
      await pause(300);
      if (stopping) return;
      if (postgres.isRunning()) continue;
      steps.say('The database stopped; starting it again.');
      try {
        await postgres.restart();
        steps.say('The database is back.');
      } catch (error) {
        console.error(error instanceof Complaint ? error.message : error);
        await pause(3000);
      }
    }
  })();
}

/** What the API has told us to pass on; `greeted` once the address stands above it. */
const said = { greeted: false, lines: /** @type {string[]} */ ([]) };

/** @param {string[]} lines */
function passOn(lines) {
  if (said.greeted) steps.say(lines.join('\n'));
  else said.lines.push(...lines);
}

let told = false;

/** A restarted API says it again, and once is enough. @param {import('./api-process.mjs').LogLine} line */
function listen({ msg, signIns, url }) {
  if (told) return;
  if (msg === 'demo ready' && Array.isArray(signIns)) passOn(['  Demo company, sign in with:', ...signIns.map(signInLine)]);
  else if (msg === 'set-up link' && typeof url === 'string') passOn(['  The database is empty. Make the first company within an hour at:', `    ${url}`]);
  else return;
  told = true;
}

/** @param {unknown} signIn */
function signInLine(signIn) {
  const text = (/** @type {string} */ name) => {
    const value = typeof signIn === 'object' && signIn !== null ? /** @type {Record<string, unknown>} */ (signIn)[name] : undefined;
    return typeof value === 'string' ? value : '';
  };
  return `    ${(text('role') || text('name')).padEnd(12)} ${text('email') || text('link') || text('url')}   ${text('password')}`.trimEnd();
}

function greet() {
  steps.say(`\nYardfall is ready at ${addressOf(place)} (${steps.total()})`);
  steps.say([...said.lines, `  Log: ${path.join(place.dataDir, 'api.log')}`, '  Ctrl-C stops it.'].join('\n'));
  said.greeted = true;
}

async function start() {
  checkNode();
  place.port = portFrom(process.env.PORT, place.port);
  steps.say('Yardfall');
  makeDataFolder(place.dataDir);
  const other = take(lockFile, 'start.mjs', addressOf(place));
  if (other) throw new Complaint(`Yardfall already runs from this folder, at ${other.note ?? 'another port'} (process ${other.pid}): stop that one first, or choose another data folder with YARDFALL_DATA.`);
  running.push(async () => release(lockFile));
  await endOrphan(place.dataDir);
  await needPort(place.port, place.host);
  await ensureInstalled(steps);
  const database = await openDatabase(steps, place.dataDir);
  if (database.postgres) running.push(database.postgres.stop);
  watchDatabase(database);
  await ensureBuilt(steps, { only: SERVICE });
  const began = () => runApi({ database, place, onLine: listen, onDeath: (how) => steps.say(`The API stopped (${how}); starting it again.`) });
  const api = await steps.step('Starting the API', began);
  running.push(api.stop);
  greet();
}

await run(async () => {
  listenForStop();
  try {
    await start();
  } catch (error) {
    stopping = true;
    for (const end of running.reverse()) await end();
    throw error;
  }
});
if (stopping) process.exit();
