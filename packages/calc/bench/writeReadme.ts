import { writeFileSync } from 'node:fs';
import { methodReadme } from '../src/testing/methodReadme.ts';

writeFileSync(new URL('../README.md', import.meta.url), methodReadme());
