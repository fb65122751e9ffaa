// @ts-check
// A test file with all that it imports as one script, in which the mutants of the folder sleep.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';
import { inRoot } from '../paths.mjs';
import { instrument } from './instrument.mjs';

/** @typedef {import('./instrument.mjs').Mutant} Mutant */
/** @typedef {{ name: string, code: string }} Script */

export const SOURCES = inRoot('packages/calc/src');
/** Only examples count here: generated cases would kill by luck, golden results by any change; the years of a station and an integration of whole yards take a minute for each mutant. */
const NOT_EXAMPLES = /\.property\.test\.ts$|\.soak\.test\.ts$|fuzz\.test\.ts$|golden\.test\.ts$|years\.test\.ts$|independent\.test\.ts$/;

/** @param {string} folder @param {(name: string) => boolean} wanted @returns {string[]} */
const filesOf = (folder, wanted) => readdirSync(path.join(SOURCES, folder), { recursive: true, encoding: 'utf8' }).filter(wanted).sort().map((name) => path.join(SOURCES, folder, name));

/** @param {string} folder */
export const testsOf = (folder) => filesOf(folder, (name) => name.endsWith('.test.ts') && !NOT_EXAMPLES.test(name));

/** @param {string} folder @param {readonly string[]} only file names; all when empty */
export function mutantsOf(folder, only) {
  /** @type {Map<string, string>} */
  const texts = new Map();
  /** @type {Mutant[]} */
  const mutants = [];
  for (const file of filesOf(folder, (name) => name.endsWith('.ts') && !name.endsWith('.test.ts'))) {
    const wanted = only.length === 0 || only.includes(path.basename(file));
    const made = instrument(path.relative(SOURCES, file), readFileSync(file, 'utf8'), mutants.length + 1, wanted);
    texts.set(file, made.text);
    mutants.push(...made.mutants);
  }
  return { texts, mutants };
}

/** @param {string} test @param {ReadonlyMap<string, string>} texts instrumented sources @returns {Promise<Script>} */
export async function bundle(test, texts) {
  const output = await build({
    configFile: false, logLevel: 'silent', root: inRoot(), resolve: { conditions: ['development'] },
    plugins: [{
      name: 'mutants', enforce: 'pre',
      load: (id) => texts.get(id) ?? (id.startsWith(SOURCES) && !id.includes('/testing/') && !id.endsWith('.test.ts') ? instrument(id, readFileSync(id, 'utf8'), 0, false).text : null),
      transform: (code, id) => (code.includes('import.meta.url') ? code.replaceAll('import.meta.url', JSON.stringify(String(pathToFileURL(id)))) : null),
    }],
    build: { ssr: test, write: false, minify: false, target: 'es2023', rolldownOptions: { external: ['vitest', /^node:/], output: { format: 'cjs' } } },
  });
  const chunk = /** @type {{ output: { code?: string }[] }} */ (/** @type {unknown} */ (output)).output[0];
  if (chunk?.code === undefined) throw new Error(`no script came of ${test}`);
  return { name: path.relative(SOURCES, test), code: chunk.code };
}
