// @ts-check
// npm run evaluate -- FILE --json: only the answer goes to standard output.
import { ensureBuilt } from './build.mjs';
import { passThrough } from './child.mjs';
import { run } from './complaint.mjs';
import { ensureInstalled } from './install.mjs';
import { inRoot } from './paths.mjs';
import { createSteps } from './steps.mjs';

await run(async () => {
  const steps = createSteps(process.stderr);
  await ensureInstalled(steps);
  await ensureBuilt(steps, { only: ['calc', 'contracts', 'text', 'cli'] });
  return passThrough(process.execPath, [inRoot('apps/cli/dist/main.js'), 'evaluate', ...process.argv.slice(2)], { cwd: process.env.INIT_CWD });
});
