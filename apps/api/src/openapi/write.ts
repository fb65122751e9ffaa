import { writeFileSync } from 'node:fs';
import { buildOpenApi } from './document.ts';

/** `write.ts FILE` writes the document there; without FILE it is printed. The check compares it with the committed one. */
const text = `${JSON.stringify(buildOpenApi(), null, 1)}\n`;
const file = process.argv[2];
if (file === undefined) process.stdout.write(text);
else writeFileSync(file, text);
