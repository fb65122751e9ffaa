import { writeFileSync } from 'node:fs';
import { findingsMarkdown } from '../src/testing/findingsMarkdown.ts';

/** Writes the table of checks, limits, sources and cases. */
writeFileSync(new URL('../FINDINGS.md', import.meta.url), findingsMarkdown());
