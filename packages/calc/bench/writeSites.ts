import { writeFileSync } from 'node:fs';
import { answeredSite, printedSites, sitesMarkdown } from '../src/testing/siteTable.ts';

/** Writes SITES.md: the demo sites beside their printed numbers. */
writeFileSync(new URL('../SITES.md', import.meta.url), sitesMarkdown(Object.keys(printedSites).map(answeredSite)));
