// @ts-check
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { Validator } from '@seriousme/openapi-schema-validator';
import { capture } from '../child.mjs';
import { inRoot, root } from '../paths.mjs';

const WRITER = 'apps/api/src/openapi/write.ts';
const COMMITTED = 'apps/api/openapi.json';

/** @param {string} was @param {string} is @returns {string} the first line that differs */
export function firstDifference(was, is) {
  const before = was.split('\n');
  const after = is.split('\n');
  const at = after.findIndex((text, i) => text !== before[i]);
  const line = at < 0 ? after.length : at;
  return `line ${line + 1}\n  committed: ${before[line] ?? '(end)'}\n  generated: ${after[line] ?? '(end)'}`;
}

/** @param {string} file @returns {Promise<string>} */
async function generate(file) {
  const { code, output } = await capture(process.execPath, ['--conditions=development', '--import', '@oxc-node/core/register', WRITER, file], { cwd: root });
  return code === 0 ? '' : `${WRITER} ended with code ${code}:\n${output.trim()}`;
}

/** Is the committed document the one that the contracts make, and is it OpenAPI 3.1? @returns {Promise<string>} */
export async function checkOpenApi() {
  if (!existsSync(inRoot(COMMITTED))) return `${COMMITTED} is missing: npm run openapi`;
  const dir = mkdtempSync(path.join(tmpdir(), 'yardfall-openapi-'));
  try {
    const file = path.join(dir, 'openapi.json');
    const wrong = await generate(file);
    if (wrong) return wrong;
    const is = readFileSync(file, 'utf8');
    const was = readFileSync(inRoot(COMMITTED), 'utf8');
    if (is !== was) return `${COMMITTED} is not what the contracts make: ${firstDifference(was, is)}\nWrite it again: npm run openapi`;
    const document = JSON.parse(is);
    if (!String(document.openapi).startsWith('3.1.')) return `the document says OpenAPI ${document.openapi}, not 3.1`;
    const { valid, errors } = await new Validator().validate(document);
    return valid ? '' : `the document is not valid OpenAPI 3.1:\n${JSON.stringify(errors, null, 1).slice(0, 2000)}`;
  } finally {
    rmSync(dir, { recursive: true, force: true });
  }
}
