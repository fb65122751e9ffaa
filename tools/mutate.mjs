// @ts-check
// npm run mutate -- FOLDER... [FILE.ts...] [--quick]: changes the formulas of packages/calc one at a time and asks whether an example notices.
// --quick asks the quickest examples only, for who is writing them; the score is written when whole folders are asked of all examples.
import { bundle, mutantsOf, testsOf } from './mutate/bundle.mjs';
import { run } from './complaint.mjs';
import { FOLDERS } from './mutate/folders.mjs';
import { hunt } from './mutate/hunt.mjs';
import { listedIn, loadEquivalents, summary, survivorLines, table, write } from './mutate/report.mjs';
import { createSteps } from './steps.mjs';

await run(async () => {
  const steps = createSteps();
  const words = process.argv.slice(2);
  const only = words.filter((word) => word.endsWith('.ts'));
  const asked = words.filter((word) => !word.endsWith('.ts') && !word.startsWith('--'));
  const quick = words.includes('--quick');
  const equivalents = loadEquivalents();
  const listed = listedIn(equivalents);
  let left = 0;
  for (const folder of asked.length > 0 ? asked : FOLDERS) {
    const { texts, mutants } = mutantsOf(folder, only);
    const scripts = [];
    for (const test of testsOf(folder)) scripts.push(await bundle(test, texts));
    steps.say(`${folder}: ${mutants.length} mutants, ${scripts.length} files of examples`);
    const report = summary(folder, await hunt(mutants, scripts, (mutant) => quick || listed(mutant), () => undefined), equivalents);
    for (const text of survivorLines(report.survivors)) steps.say(text);
    steps.say(table(report));
    if (only.length === 0 && !quick) write(report);
    left += report.survivors.length + report.unused.length;
  }
  steps.say(`\n${left} survivors without a reason (${steps.total()})`);
  return left > 0 ? 1 : 0;
});
