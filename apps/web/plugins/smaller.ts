import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { promisify } from 'node:util';
import { brotliCompress } from 'node:zlib';
import type { Plugin } from 'vite';

const compress = promisify(brotliCompress);
/** Smaller ones fit a packet as they are [bytes]. */
const least = 1000;

/** Puts a compressed copy beside every text file of the build; the service sends it to whoever takes it. */
export function smaller(): Plugin {
  return {
    name: 'smaller',
    apply: 'build',
    async writeBundle({ dir }, bundle) {
      const names = Object.keys(bundle).filter((name) => /\.(js|css|html|svg)$/.test(name));
      await Promise.all(names.map(async (name) => {
        const file = path.join(dir ?? 'dist', name);
        const content = await readFile(file);
        if (content.length >= least) await writeFile(`${file}.br`, await compress(content));
      }));
    },
  };
}
