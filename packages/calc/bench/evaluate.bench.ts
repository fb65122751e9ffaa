import { readFileSync } from 'node:fs';
import { evaluate } from '@yardfall/calc';
import type { DesignDocument } from '@yardfall/calc';
import { report, timed } from './measure.ts';

const siteOf = (name: string): DesignDocument => JSON.parse(readFileSync(new URL(`../../../prisma/seed/sites/${name}.json`, import.meta.url), 'utf8')) as DesignDocument;

/** The demo design is the one that a drag must follow; the others stand beside it. */
for (const name of ['tern-hollow', 'ridgeback', 'sallow-bend']) {
  const document = siteOf(name);
  const demo = name === 'tern-hollow';
  const plain = timed(() => { evaluate(document, { band: false }); }, 25);
  report(`${name}: numbers, findings, all what-ifs`, plain.median, 'ms', demo ? 10 : null);
  const band = timed(() => { evaluate(document); }, 9);
  report(`${name}: with the band`, band.median, 'ms', demo ? 100 : null);
}
