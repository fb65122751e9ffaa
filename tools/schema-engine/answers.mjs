// @ts-check
// Two requests that the WebAssembly build refuses for want of a shadow database. Its `diff` does open one through the adapter,
// so both are answered with `diff`.

/** @typedef {import('../schema-engine.mjs').Engine} Engine */
/** @typedef {{ migrationsList: { lockfile: { content: string | null } }, schema: object, filters?: object, migrationName?: string, draft?: boolean }} Request */

const EMPTY = '-- This is an empty migration.';
const RISKY = /DROP (TABLE|COLUMN)|SET DATA TYPE|CREATE UNIQUE INDEX|SET NOT NULL|ADD COLUMN\s+\S+\s+[^,;]*NOT NULL(?![^,;]*DEFAULT)/;

/** @param {Engine} engine @param {Request} request @returns {Promise<string>} the SQL from what the migrations make to what the schema says */
async function missingSql(engine, { migrationsList, schema, filters }) {
  const from = migrationsList.lockfile.content == null ? { tag: 'empty' } : { tag: 'migrations', ...migrationsList };
  const { stdout } = await /** @type {NonNullable<Engine['diff']>} */ (engine.diff).call(engine, { from, to: { tag: 'schemaDatamodel', ...schema }, script: true, exitCode: null, shadowDatabaseUrl: null, filters });
  return !stdout || stdout.trim() === EMPTY ? '' : stdout;
}

/** @param {Engine} engine @param {Request} request */
export async function createMigration(engine, request) {
  const sql = await missingSql(engine, request);
  const stamp = new Date().toISOString().replace(/\D/g, '').slice(0, 14);
  const slug = (request.migrationName ?? '').replace(/[^A-Za-z0-9]+/g, '_').toLowerCase().slice(0, 200);
  return { connectorType: 'postgresql', generatedMigrationName: slug ? `${stamp}_${slug}` : stamp, migrationScript: sql || (request.draft ? EMPTY : null), extension: 'sql' };
}

/** @param {Engine} engine @param {Request} request */
export async function evaluateDataLoss(engine, request) {
  if (request.migrationsList.lockfile.content == null) return { migrationSteps: 1, unexecutableSteps: [], warnings: [] };
  const steps = (await missingSql(engine, request)).split(/^-- (?=[A-Z])/m).filter((step) => step.trim());
  const warnings = steps.flatMap((step, stepIndex) => (RISKY.test(step) ? [{ stepIndex, message: `Check for data loss: ${step.trim().split('\n').slice(1).join(' ').slice(0, 200)}` }] : []));
  return { migrationSteps: steps.length, unexecutableSteps: [], warnings };
}
