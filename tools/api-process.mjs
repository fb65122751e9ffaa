// @ts-check
// One API process: started, watched, started again when it dies, drained at the end.
import { spawn } from 'node:child_process';
import { createWriteStream, existsSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { createInterface } from 'node:readline';
import { endsWithin, isAlive, pause } from './child.mjs';
import { inRoot } from './paths.mjs';

const MAIN = path.join('apps', 'api', 'dist', 'main.js');
const DRAIN_TIME = 20_000;
const LOG_LIMIT = 20 * 1024 * 1024;
const CALM = 60_000;
const TAIL = 30;

/** @typedef {{ msg?: string, level?: number | string, signIns?: unknown, url?: unknown, [field: string]: unknown }} LogLine */
/** @typedef {{ dataDir: string, env: NodeJS.ProcessEnv, onLine: (line: LogLine) => void, onDeath: (how: string) => void }} ApiOptions */
/** @typedef {{ pid: () => number, ended: () => string | undefined, tail: () => string, keepRunning: () => void, stop: () => Promise<void>, stopAtOnce: () => void }} ApiProcess */

/** @param {string} file */
function openLog(file) {
  if (existsSync(file) && statSync(file).size > LOG_LIMIT) renameSync(file, `${file}.1`);
  return createWriteStream(file, { flags: 'a', mode: 0o600 });
}

/** An API whose starter was killed may still hold the port. @param {string} dataDir */
export async function endOrphan(dataDir) {
  const file = path.join(dataDir, 'api.pid');
  const pid = existsSync(file) ? Number(readFileSync(file, 'utf8')) : 0;
  if (!pid || !isAlive(pid) || !isOurs(pid)) return false;
  process.kill(pid, 'SIGTERM');
  if (!(await endsWithin(pid, DRAIN_TIME)) && isAlive(pid)) process.kill(pid, 'SIGKILL');
  await endsWithin(pid, 2000);
  return true;
}

/** Process numbers are given out again. @param {number} pid */
function isOurs(pid) {
  const file = `/proc/${pid}/cmdline`;
  return process.platform !== 'linux' || (existsSync(file) && readFileSync(file, 'utf8').includes(MAIN));
}

/** @param {ApiOptions} options @returns {ApiProcess} */
export function startApi({ dataDir, env, onLine, onDeath }) {
  const log = openLog(path.join(dataDir, 'api.log'));
  /** @type {string[]} */
  let tail = [];
  /** @type {import('node:child_process').ChildProcess | undefined} */
  let child;
  /** @type {string | undefined} */
  let ended;
  let stopping = false;
  let keep = false;
  let tries = 0;

  /** @param {string} text */
  const take = (text) => {
    log.write(`${text}\n`);
    tail = [...tail.slice(1 - TAIL), text];
    if (text.startsWith('{')) onLine(parse(text));
  };

  const up = () => {
    const began = Date.now();
    ended = undefined;
    // detached: Ctrl-C goes to the whole foreground group, and the API is to be drained, not cut off;
    // the channel closes when this process dies, and parent-watch.mjs then ends the API, so that no orphan keeps the port
    const api = spawn(process.execPath, ['--enable-source-maps', '--import', inRoot('tools', 'parent-watch.mjs'), inRoot(MAIN)], { env, cwd: inRoot(), detached: true, stdio: ['ignore', 'pipe', 'pipe', 'ipc'] });
    child = api;
    api.channel?.unref();
    if (api.pid) writeFileSync(path.join(dataDir, 'api.pid'), String(api.pid));
    for (const stream of [api.stdout, api.stderr]) if (stream) createInterface({ input: stream }).on('line', take);
    api.on('error', (error) => { ended = error.message; });
    api.on('exit', (code, signal) => {
      ended = signal ?? `code ${code}`;
      if (!keep || stopping) return;
      tries = Date.now() - began > CALM ? 0 : tries + 1;
      onDeath(ended);
      setTimeout(() => { if (!stopping) up(); }, Math.min(200 * 2 ** tries, 10_000));
    });
  };
  up();

  return {
    pid: () => child?.pid ?? 0,
    ended: () => ended,
    tail: () => tail.join('\n'),
    keepRunning: () => { keep = true; },
    stop: async () => {
      stopping = true;
      const pid = child?.pid;
      if (pid && ended === undefined) {
        child?.kill('SIGTERM');
        for (const end = Date.now() + DRAIN_TIME; ended === undefined && Date.now() < end;) await pause(20);
        if (ended === undefined) child?.kill('SIGKILL');
      }
      rmSync(path.join(dataDir, 'api.pid'), { force: true });
      await new Promise((resolve) => log.end(resolve));
    },
    stopAtOnce: () => { stopping = true; child?.kill('SIGKILL'); },
  };
}

/** @param {string} text @returns {LogLine} */
function parse(text) {
  try {
    return JSON.parse(text);
  } catch {
    return {}; // a line that only looks like a record stays in the log as it is
  }
}
