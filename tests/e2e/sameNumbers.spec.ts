import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from '@playwright/test';
import { build } from 'vite';
import type { DesignDocument } from '@yardfall/calc';
import { pause } from '../../tools/child.mjs';
import { generatedDocument } from '../../packages/calc/src/testing/generate/document.ts';
import { canonicalText, evaluate } from './support/engine.ts';

interface Case {
  readonly name: string;
  readonly text: string;
  readonly band: boolean;
}

const sites = new URL('../../prisma/seed/sites/', import.meta.url);

/** Every demo site and two hundred generated ones. The band is the same routing many times, so that a few are enough with it. */
function cases(): Case[] {
  const demos = readdirSync(sites).filter((name) => name.endsWith('.json')).sort().map((name) => ({ name, text: readFileSync(new URL(name, sites), 'utf8'), band: true }));
  const generated = Array.from({ length: 200 }, (_, i) => ({ name: `generated ${5000 + i}`, text: JSON.stringify(generatedDocument(5000 + i)), band: i % 40 === 0 }));
  return [...demos, ...generated];
}

function answerOf({ text, band }: Case): string {
  try {
    return canonicalText(evaluate(JSON.parse(text) as DesignDocument, { band }));
  } catch (error) {
    return String(error);
  }
}

/** The engine as the client ships it: bundled and minified for a browser. */
async function engine(): Promise<string> {
  const output = await build({
    configFile: false, logLevel: 'silent', resolve: { conditions: ['development'] },
    build: { write: false, lib: { entry: fileURLToPath(new URL('support/engine.ts', import.meta.url)), formats: ['iife'], name: 'engine' } },
  });
  const [bundle] = Array.isArray(output) ? output : [];
  const code = bundle?.output[0].code;
  if (code === undefined) throw new Error('no script came of the engine');
  return code;
}

declare global {
  interface Window {
    readonly engine: { readonly evaluate: typeof evaluate; readonly canonicalText: typeof canonicalText };
  }
}

test('two hundred generated documents and every demo site give the same bytes in Node and in this browser', async ({ page }) => {
  test.setTimeout(600_000); // a busy machine is slow; what is asserted is never a time
  await page.route('https://numbers.test/', (route) => route.fulfill({ contentType: 'text/html', body: '<!doctype html><title>numbers</title>' }));
  await page.goto('https://numbers.test/');
  await page.addScriptTag({ content: await engine() });
  const all = cases();
  const differing: string[] = [];
  let evaluated = 0;
  for (let from = 0; from < all.length; from += 10) {
    const some = all.slice(from, from + 10);
    const there = page.evaluate(async (asked) => {
      const hashes: string[] = [];
      for (const { text, band } of asked) {
        let answer = '';
        try {
          answer = window.engine.canonicalText(window.engine.evaluate(JSON.parse(text), { band }));
        } catch (error) {
          answer = String(error);
        }
        const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', new TextEncoder().encode(answer)));
        hashes.push([...digest].map((byte) => byte.toString(16).padStart(2, '0')).join(''));
      }
      return hashes;
    }, some);
    // The question must have left before this process computes; the browser has one of its own, so that both sides work at once.
    await pause(25);
    const here = some.map(answerOf);
    evaluated += here.filter((answer) => answer.startsWith('{')).length;
    const hashes = await there;
    some.forEach(({ name }, index) => { if (createHash('sha256').update(here[index] ?? '').digest('hex') !== hashes[index]) differing.push(name); });
  }
  expect(differing).toEqual([]);
  expect(evaluated).toBe(all.length);
});
