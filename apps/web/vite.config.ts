import path from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { chunks, earlyScript, firstFiles } from './plugins/chunks.ts';
import { shell } from './plugins/shell.ts';
import { smaller } from './plugins/smaller.ts';
import { withoutJsonSchema } from './plugins/withoutJsonSchema.ts';
import { words } from './plugins/words.ts';

const packages = path.resolve(import.meta.dirname, '../../packages');
const source = (name: string) => path.join(packages, name, 'src/index.ts');

export default defineConfig({
  root: import.meta.dirname,
  plugins: [words(), withoutJsonSchema(), react(), earlyScript(), smaller(), firstFiles(), shell(import.meta.dirname)],
  resolve: {
    // The packages are taken from their source, so that the page builds without building them first.
    alias: [
      { find: '@yardfall/calc/upgrade', replacement: path.join(packages, 'calc/src/document/upgrade.ts') },
      ...['calc', 'contracts', 'drawing', 'text'].map((name) => ({ find: `@yardfall/${name}`, replacement: source(name) })),
    ],
  },
  build: {
    outDir: 'dist',
    emptyOutDir: true,
    sourcemap: true,
    // The content policy allows neither inline scripts nor data: fonts.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: { output: { codeSplitting: chunks(import.meta.dirname) } },
  },
  server: {
    host: '127.0.0.1',
    port: Number(process.env.WEB_PORT ?? 5173),
    strictPort: true,
    proxy: { '/api': { target: process.env.API_URL ?? 'http://127.0.0.1:3000', changeOrigin: false } },
  },
  worker: { format: 'es' },
});
