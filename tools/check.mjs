// @ts-check
// npm run check: types, lint, import rules, the two source rules, drift of the OpenAPI document and of the schema, dead code.
import { ensureClient } from './build.mjs';
import { capture } from './child.mjs';
import { checkOpenApi } from './check/openapi.mjs';
import { checkSchemaDrift } from './check/schema-drift.mjs';
import { Complaint, messageOf, run } from './complaint.mjs';
import { ensureInstalled } from './install.mjs';
import { inRoot, root } from './paths.mjs';
import { createSteps } from './steps.mjs';

/** @typedef {{ name: string, work: () => Promise<string> }} Check work returns what is wrong, or nothing */

/** @param {string} program inside node_modules @param {string[]} args @returns {() => Promise<string>} */
const tool = (program, args) => async () => {
  const { code, output } = await capture(process.execPath, [inRoot('node_modules', program), ...args], { cwd: root, env: { ...process.env, NO_COLOR: '1', FORCE_COLOR: '0' } });
  return code === 0 ? '' : output.trim() || `ended with code ${code}`;
};

const CODE = ['apps', 'packages', 'tests', 'tools', 'prisma.config.ts', 'vitest.config.ts', 'playwright.config.ts'];
const PROJECTS = ['packages/calc', 'packages/contracts', 'packages/drawing', 'packages/text', 'apps/api', 'apps/web', 'apps/cli', 'tests', 'tools'];

/** @type {Check[]} the long ones first, so that two at a time end together */
const CHECKS = [
  { name: 'lint', work: tool('oxlint/bin/oxlint', ['--type-aware', '--format=unix']) },
  ...PROJECTS.map((project) => ({ name: `types of ${project}`, work: tool('typescript-native/bin/tsc', ['-p', project]) })),
  { name: 'import rules', work: tool('dependency-cruiser/bin/dependency-cruise.mjs', ['--config', '.dependency-cruiser.mjs', '--output-type', 'err-long', ...CODE]) },
  { name: 'exact numbers in calc, words in the client', work: async () => tool('../tools/check/source-rules.mjs', [])() },
  { name: 'drift of the OpenAPI document', work: checkOpenApi },
  { name: 'drift of the database schema', work: checkSchemaDrift },
  { name: 'dead code', work: tool('knip/bin/knip.js', ['--no-progress']) },
];

/** @param {Check} check @returns {Promise<{ name: string, wrong: string, time: string }>} */
async function carryOut({ name, work }) {
  const time = createSteps();
  try {
    return { name, wrong: await work(), time: time.total() };
  } catch (error) {
    return { name, wrong: error instanceof Complaint ? messageOf(error) : error instanceof Error ? String(error.stack) : String(error), time: time.total() };
  }
}

await run(async () => {
  const steps = createSteps();
  await ensureInstalled(steps);
  await ensureClient(steps);
  const asked = process.argv.slice(2);
  const due = CHECKS.filter(({ name }) => asked.length === 0 || asked.some((word) => name.includes(word)));
  if (due.length === 0) throw new Complaint(`No check is named so; there are: ${CHECKS.map(({ name }) => name).join('; ')}.`);
  /** @type {string[]} */
  const broken = [];
  const queue = [...due];
  const worker = async () => {
    for (let check = queue.shift(); check; check = queue.shift()) {
      const { name, wrong, time } = await carryOut(check);
      steps.say(`  ${wrong ? 'WRONG' : 'ok   '} ${name} (${time})`);
      if (wrong) broken.push(`\n== ${name}\n${wrong}`);
    }
  };
  await Promise.all([worker(), worker()]);
  for (const text of broken) steps.say(text);
  steps.say(`\n${due.length - broken.length} checks passed, ${broken.length} failed (${steps.total()})`);
  return broken.length > 0 ? 1 : 0;
});
