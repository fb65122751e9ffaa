import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { calcVersion, evaluate } from '@yardfall/calc';
import type { DesignDocument } from '@yardfall/calc';

/** Writes the golden results of the demo sites. Run it only together with a new calc version. */
const folder = new URL('../fixtures/golden/', import.meta.url);
mkdirSync(folder, { recursive: true });
for (const name of ['tern-hollow', 'ridgeback', 'sallow-bend']) {
  const document = JSON.parse(readFileSync(new URL(`../../../prisma/seed/sites/${name}.json`, import.meta.url), 'utf8')) as DesignDocument;
  const evaluation = evaluate(document);
  const golden = {
    calcVersion, sha256: createHash('sha256').update(JSON.stringify(evaluation)).digest('hex'),
    freeboards: evaluation.results.freeboards.map(({ sill, returnPeriod, onTwin, lower }) => [sill, returnPeriod, onTwin, lower]),
    findings: evaluation.findings.map(({ severity, code, at }) => `${severity} ${code} ${at ?? ''}`.trim()),
  };
  writeFileSync(new URL(`${name}.json`, folder), `${JSON.stringify(golden, null, 1)}\n`);
}
