// @ts-check
// The driver adapter is written for the client, not for migrations. Three repairs, in this process only:
// it cuts a script at every semicolon, which breaks function bodies and quoted text; it does not know the catalog's "char" type
// (prisma/orm#27403); and migrations need one session, so that the advisory lock and the statements share it.
import { ColumnTypeEnum } from '@prisma/driver-adapter-utils';
import { PrismaPg } from '@prisma/adapter-pg';
import pg from 'pg';

const CHAR = 18;
const TEXT = 25;

/** @type {Set<pg.Pool>} */
const pools = new Set();

export async function closePools() {
  for (const pool of pools) {
    pools.delete(pool);
    if (!pool.ended) await pool.end();
  }
}

/**
 * pg lets a connection string win over `database`, which would make the shadow database the real one: hence the parts.
 * @param {string} url @param {string} [database]
 * @returns {pg.ClientConfig}
 */
export function connectionOf(url, database) {
  const { hostname, port, username, password, pathname, searchParams } = new URL(url);
  const schema = searchParams.get('schema');
  const sslmode = searchParams.get('sslmode');
  return {
    host: hostname, port: Number(port || 5432), user: decodeURIComponent(username), password: decodeURIComponent(password),
    database: database ?? decodeURIComponent(pathname.slice(1)), application_name: 'prisma-schema-engine',
    ...(sslmode && sslmode !== 'disable' ? { ssl: true } : {}),
    ...(schema ? { options: `-c search_path="${schema}"` } : {}),
  };
}

/** @type {WeakSet<object>} */
const repaired = new WeakSet();

/** @template T @param {T} adapter @returns {T} */
function repair(adapter) {
  const scripts = Object.getPrototypeOf(adapter);
  const queries = Object.getPrototypeOf(scripts);
  if (repaired.has(queries)) return adapter;
  repaired.add(queries);
  const { performIO, queryRaw } = queries;
  queries.performIO = async function (/** @type {unknown} */ query) {
    const result = await performIO.call(this, query);
    const fields = /** @type {{ dataTypeID: number }[]} */ (result.fields);
    this.charColumns = fields.flatMap((field, i) => (field.dataTypeID === CHAR ? [i] : []));
    for (const field of fields) if (field.dataTypeID === CHAR) field.dataTypeID = TEXT;
    return result;
  };
  queries.queryRaw = async function (/** @type {unknown} */ query) {
    const result = await queryRaw.call(this, query);
    for (const i of this.charColumns) result.columnTypes[i] = ColumnTypeEnum.Character;
    return result;
  };
  scripts.executeScript = async function (/** @type {string} */ sql) {
    try {
      await this.client.query(sql);
    } catch (error) {
      this.onError(error);
    }
  };
  return adapter;
}

/** @param {string} url */
export function adapterFactory(url) {
  const options = { schema: new URL(url).searchParams.get('schema') ?? undefined, disposeExternalPool: true };
  /** @param {string} [database] */
  const open = async (database) => {
    const pool = new pg.Pool({ ...connectionOf(url, database), max: 1, idleTimeoutMillis: 0 });
    pools.add(pool);
    return repair(await new PrismaPg(pool, options).connect());
  };
  return {
    provider: 'postgres', adapterName: '@prisma/adapter-pg',
    connect: () => open(),
    async connectToShadowDb() {
      const name = `prisma_migrate_shadow_db_${crypto.randomUUID()}`;
      const admin = new pg.Client(connectionOf(url));
      await admin.connect();
      await admin.query(`CREATE DATABASE "${name}"`);
      const shadow = await open(name);
      const dispose = shadow.dispose.bind(shadow);
      shadow.dispose = async () => {
        await dispose();
        await admin.query(`DROP DATABASE IF EXISTS "${name}" WITH (FORCE)`);
        await admin.end();
      };
      return shadow;
    },
  };
}
