import { readFileSync } from 'node:fs';
import { evaluate } from '@yardfall/calc';
import type { DesignDocument } from '@yardfall/calc';
import { report, timed } from './measure.ts';

const siteOf = (name: string): DesignDocument => JSON.parse(readFileSync(new URL(`../../../prisma/seed/sites/${name}.json`, import.meta.url), 'utf8')) as DesignDocument;

/** The first two as a drag asks for them, without workings; the last one as it is stored. The demo design is the one that a drag must follow; the others stand beside it. */
for (const name of ['tern-hollow', 'ridgeback', 'sallow-bend']) {
  const document = siteOf(name);
  const demo = name === 'tern-hollow';
  const plain = timed(() => { evaluate(document, { band: false, whatIfs: false, workings: false }); }, 25);
  report(`${name}: numbers and findings`, plain.median, 'ms', demo ? 4 : null);
  report(`${name}: numbers and findings, processor`, plain.processor, 'ms');
  const more = timed(() => { evaluate(document, { band: false, whatIfs: true, workings: false }); }, 15);
  report(`${name}: with all what-ifs`, more.median, 'ms', demo ? 10 : null);
  report(`${name}: with all what-ifs, processor`, more.processor, 'ms');
  const band = timed(() => { evaluate(document); }, 7);
  report(`${name}: with what-ifs and band`, band.median, 'ms', demo ? 100 : null);
  report(`${name}: with what-ifs and band, processor`, band.processor, 'ms');
}
