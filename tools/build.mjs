// @ts-check
// Builds what is missing or older than its source: the Prisma client, the packages, the API, the command line, the web client.
import { existsSync, renameSync, rmSync } from 'node:fs';
import path from 'node:path';
import { capture } from './child.mjs';
import { Complaint, diskFull, run } from './complaint.mjs';
import { ensureInstalled } from './install.mjs';
import { withLock } from './lock.mjs';
import { inRoot, needRoom, root } from './paths.mjs';
import { contentStamp, hasStamp, putStamp } from './stamps.mjs';
import { createSteps } from './steps.mjs';

/** @typedef {{ name: string, dir: string, uses: string[], sources: string[], command: (out: string) => [string, string[]] }} Unit */

// Only translated here: the types are `npm run check`'s business, and a newcomer's first start should not wait for them.
const tsc = (/** @type {string} */ dir) => (/** @type {string} */ out) => /** @type {[string, string[]]} */ (['typescript-native/bin/tsc', ['-p', `${dir}/tsconfig.build.json`, '--noCheck', '--declaration', 'false', '--outDir', out]]);

/** @param {string} dir @param {string[]} uses @returns {Unit} */
const compiled = (dir, uses) => ({ name: path.basename(dir), dir, uses, command: tsc(dir), sources: [`${dir}/src`, `${dir}/package.json`, `${dir}/tsconfig.json`, `${dir}/tsconfig.build.json`, 'tsconfig.base.json'] });

/** @type {Unit[]} */
const UNITS = [
  compiled('packages/calc', []),
  compiled('packages/contracts', ['calc']),
  compiled('packages/drawing', ['calc']),
  compiled('packages/text', ['calc']),
  compiled('apps/cli', ['calc', 'contracts', 'text']),
  compiled('apps/api', ['calc', 'contracts', 'drawing', 'text', 'prisma']),
  {
    name: 'web', dir: 'apps/web', uses: ['calc', 'contracts', 'drawing', 'text'],
    command: (out) => ['vite/bin/vite.js', ['build', 'apps/web', '--outDir', out, '--emptyOutDir', '--logLevel', 'warn']],
    sources: ['apps/web/src', 'apps/web/public', 'apps/web/plugins', 'apps/web/index.html', 'apps/web/vite.config.ts', 'apps/web/package.json', 'apps/web/tsconfig.json', 'tsconfig.base.json'],
  },
];

/** What a running service needs. */
export const SERVICE = ['calc', 'contracts', 'drawing', 'text', 'api', 'web'];

/** The lock decides the versions of everything that takes part in a build. */
const versions = () => contentStamp(['package-lock.json']);

/** @param {string} file a program inside node_modules @param {string[]} args @param {string} what */
async function runTool(file, args, what) {
  const { code, output } = await capture(process.execPath, [inRoot('node_modules', file), ...args], { cwd: root, env: { ...process.env, NODE_ENV: 'production', NO_COLOR: '1', FORCE_COLOR: '0' } });
  if (code === 0) return;
  if (/ENOSPC|No space left/.test(output)) throw diskFull(root);
  throw new Complaint(`${what} could not be built:\n${output.trim().split('\n').slice(-30).join('\n')}`);
}

const CLIENT_STAMP = 'apps/api/src/generated/.stamp';
const clientStamp = () => contentStamp(['prisma/schema.prisma', 'prisma/schema'], { extra: [versions()] });
const clientIsStale = () => existsSync(inRoot('prisma/schema.prisma')) && !hasStamp(inRoot(CLIENT_STAMP), clientStamp());

/** @param {import('./steps.mjs').Steps} steps */
export async function ensureClient(steps) {
  if (!clientIsStale()) return;
  await steps.step('Generating the database client', async () => {
    const stamp = clientStamp();
    await runTool('prisma/build/index.js', ['generate'], 'The database client');
    putStamp(inRoot(CLIENT_STAMP), stamp);
  });
}

/** @param {Unit} unit @param {string} stamp */
async function buildUnit(unit, stamp) {
  needRoom(root, 100);
  const dist = inRoot(unit.dir, 'dist');
  const half = `${dist}.new`; // a service that runs from the old one keeps it until the new one is whole
  rmSync(half, { recursive: true, force: true });
  try {
    const [program, args] = unit.command(half);
    await runTool(program, args, unit.name);
    if (!existsSync(half)) throw new Complaint(`${unit.name} could not be built: the compiler wrote nothing.`);
    putStamp(path.join(half, '.stamp'), stamp);
    rmSync(dist, { recursive: true, force: true });
    renameSync(half, dist);
  } finally {
    rmSync(half, { recursive: true, force: true });
  }
}

/** @param {string[]} [only] @returns {{ unit: Unit, stamp: string }[]} */
function staleUnits(only) {
  const lock = versions();
  /** @type {Map<string, string>} */
  const stamps = new Map([['prisma', clientStamp()]]);
  return UNITS.flatMap((unit) => {
    const stamp = contentStamp(unit.sources, { extra: [lock, ...unit.uses.map((name) => stamps.get(name) ?? '')] });
    stamps.set(unit.name, stamp);
    const wanted = !only || only.includes(unit.name);
    return wanted && !hasStamp(inRoot(unit.dir, 'dist/.stamp'), stamp) ? [{ unit, stamp }] : [];
  });
}

/** @param {import('./steps.mjs').Steps} steps @param {{ only?: string[] }} [options] */
export async function ensureBuilt(steps, { only } = {}) {
  const needsClient = !only || only.includes('api');
  if (staleUnits(only).length === 0 && !(needsClient && clientIsStale())) return; // a built folder may belong to someone else
  await withLock(inRoot('node_modules/.yardfall-build.lock'), 'tools/', async () => {
    if (needsClient) await ensureClient(steps);
    const stale = staleUnits(only); // again: whoever held the lock may have built it
    if (stale.length > 0) await steps.step(`Building ${stale.map(({ unit }) => unit.name).join(', ')}`, () => buildAll(stale));
  });
}

/** None reads what another builds (types and the web client come from the sources), so two at a time. @param {{ unit: Unit, stamp: string }[]} stale */
async function buildAll(stale) {
  const queue = [...stale];
  const worker = async () => {
    for (let next = queue.shift(); next; next = queue.shift()) await buildUnit(next.unit, next.stamp);
  };
  const ends = await Promise.allSettled([worker(), worker()]); // the lock is kept until both have ended
  for (const end of ends) if (end.status === 'rejected') throw end.reason;
}

if (process.argv[1] === import.meta.filename) {
  await run(async () => {
    const steps = createSteps();
    await ensureInstalled(steps);
    await ensureBuilt(steps);
    steps.say(`Built in ${steps.total()}`);
  });
}
