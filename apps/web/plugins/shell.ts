import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import type { Plugin } from 'vite';

const isFontForOldBrowsers = (file: string): boolean => file.endsWith('.woff');

/** Writes sw.js: the list of every file of the build with the hash of them all, in front of the worker's source. */
export function shell(root: string): Plugin {
  return {
    name: 'yardfall-shell',
    apply: 'build',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const hash = createHash('sha256');
        const pub = path.join(root, 'public');
        const files = ['/'];
        for (const file of readdirSync(pub).sort()) {
          files.push(`/${file}`);
          hash.update(file).update(readFileSync(path.join(pub, file)));
        }
        for (const [file, item] of Object.entries(bundle).sort(([a], [b]) => (a < b ? -1 : 1))) {
          hash.update(file).update(item.type === 'chunk' ? item.code : item.source);
          if (!file.endsWith('.map') && file !== 'index.html' && !isFontForOldBrowsers(file)) files.push(`/${file}`);
        }
        const source = readFileSync(path.join(root, 'src/worker/shell.js'), 'utf8');
        const list = JSON.stringify({ version: hash.update(source).digest('hex').slice(0, 16), files });
        this.emitFile({ type: 'asset', fileName: 'sw.js', source: `const SHELL = ${list};\n${source}` });
      },
    },
  };
}
