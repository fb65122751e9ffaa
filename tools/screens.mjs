// @ts-check
// npm run screens: every home and job page, phone and desk, light and dark, English and Spanish, into .yardfall/screens.
import { ensureBuilt, SERVICE } from './build.mjs';
import { passThrough } from './child.mjs';
import { run } from './complaint.mjs';
import { ensureInstalled } from './install.mjs';
import { inRoot, root } from './paths.mjs';
import { createSteps } from './steps.mjs';

await run(async () => {
  const steps = createSteps();
  await ensureInstalled(steps);
  await ensureBuilt(steps, { only: SERVICE });
  return passThrough(process.execPath, ['--conditions=development', '--import', '@oxc-node/core/register', inRoot('tests/support/screens.ts'), ...process.argv.slice(2)], { cwd: root });
});
