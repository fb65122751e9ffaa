import { writeFileSync } from 'node:fs';
import { findingFigures, findingsMarkdown } from '../src/testing/findingsMarkdown.ts';

/** Writes the table of checks, limits, sources and cases, and the names of the figures that the sentences may use. */
writeFileSync(new URL('../FINDINGS.md', import.meta.url), findingsMarkdown());
writeFileSync(new URL('../fixtures/golden/findingFigures.json', import.meta.url), `${JSON.stringify(findingFigures(), null, 1)}\n`);
