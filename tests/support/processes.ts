import { spawn, type ChildProcess } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { isAlive, pause } from '../../tools/child.mjs';
import { inRoot } from '../../tools/paths.mjs';
import { freePort } from '../../tools/ports.mjs';

/** A whole service as a newcomer starts it: its own data folder, database and port. */
export interface RunningService {
  readonly url: string;
  readonly port: number;
  readonly dataDir: string;
  /** What it has printed so far. */
  output(): string;
  apiPid(): number;
  postgresPid(): number;
  /** kill -9 of the API or of the database server; the service is expected to bring it back by itself. */
  kill(what: 'api' | 'postgres'): void;
  ready(withinMs?: number): Promise<void>;
  stop(): Promise<void>;
  /** Stops it and removes its data. */
  remove(): Promise<void>;
}

export interface ServiceOptions {
  readonly port?: number;
  readonly dataDir?: string;
  readonly env?: NodeJS.ProcessEnv;
}

/** Settings of the machine that runs the tests must not reach the service. */
const own = ['DATABASE_URL', 'MIGRATE_DATABASE_URL', 'DEMO', 'PORT', 'HOST', 'NODE_ENV', 'VITEST', 'npm_lifecycle_event'];

export async function startService(options: ServiceOptions = {}): Promise<RunningService> {
  const port = options.port ?? (await freePort());
  const dataDir = options.dataDir ?? mkdtempSync(path.join(tmpdir(), 'yardfall-service-'));
  chmodSync(dataDir, 0o711); // when root runs the tests, the database's user must be able to pass
  const env: NodeJS.ProcessEnv = { ...process.env };
  for (const name of own) delete env[name];
  Object.assign(env, { PORT: String(port), YARDFALL_DATA: path.join(dataDir, 'data') }, options.env);
  const child = spawn(process.execPath, [inRoot('tools', 'start.mjs')], { env, cwd: inRoot(), stdio: ['ignore', 'pipe', 'pipe'] });
  const service = control(child, port, dataDir);
  try {
    await service.ready();
  } catch (error) {
    await service.remove();
    throw error;
  }
  return service;
}

function control(child: ChildProcess, port: number, dataDir: string): RunningService {
  let output = '';
  let ended: string | undefined;
  child.stdout?.on('data', (chunk: Buffer) => (output += chunk.toString()));
  child.stderr?.on('data', (chunk: Buffer) => (output += chunk.toString()));
  child.on('exit', (code, signal) => (ended = signal ?? `code ${String(code)}`));
  const url = `http://127.0.0.1:${port}`;
  const data = (...parts: string[]): string => path.join(dataDir, 'data', ...parts);
  const apiPid = (): number => pidIn(data('api.pid'));
  const postgresPid = (): number => pidIn(data('postgres', 'postmaster.pid'));
  const stop = async (): Promise<void> => {
    if (ended === undefined) child.kill('SIGTERM');
    for (const end = Date.now() + 60_000; ended === undefined && Date.now() < end; ) await pause(50);
    if (ended === undefined) child.kill('SIGKILL');
  };
  return {
    url, port, dataDir, apiPid, postgresPid, stop,
    output: () => output,
    kill: (what) => kill(what === 'api' ? apiPid() : postgresPid()),
    ready: async (withinMs = 240_000) => {
      for (const end = Date.now() + withinMs; !(await answers(`${url}/ready`)); await pause(50)) {
        if (ended !== undefined || Date.now() > end) throw new Error(`the service ${ended === undefined ? 'is not ready' : `ended with ${ended}`}:\n${output}`);
      }
    },
    remove: async () => {
      await stop();
      rmSync(dataDir, { recursive: true, force: true });
    },
  };
}

/** Waits for nothing: the moment between two writes is the point. */
function kill(pid: number): void {
  if (pid > 0 && isAlive(pid)) process.kill(pid, 'SIGKILL');
}

function pidIn(file: string): number {
  try {
    return Number.parseInt(readFileSync(file, 'utf8'), 10);
  } catch {
    return 0; // between the end of one and the start of the next
  }
}

async function answers(url: string): Promise<boolean> {
  try {
    const response = await fetch(url, { signal: AbortSignal.timeout(5000) });
    await response.arrayBuffer();
    return response.ok;
  } catch {
    return false; // not listening
  }
}
