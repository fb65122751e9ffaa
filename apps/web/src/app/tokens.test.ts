import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';

const src = path.resolve(import.meta.dirname, '..');
const css = readFileSync(path.join(import.meta.dirname, 'tokens.css'), 'utf8');

/** Token -> hex of the block that follows `selector`. */
function block(selector: string): Map<string, string> {
  const start = css.indexOf(selector);
  const body = css.slice(css.indexOf('{', start) + 1, css.indexOf('}', start));
  return new Map([...body.matchAll(/--([a-z]+): (#[0-9a-f]{6});/g)].map((m) => [m[1] ?? '', m[2] ?? '']));
}

/** WCAG 2.2, relative luminance and contrast ratio (sRGB, 0.04045 threshold of IEC 61966-2-1). */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [high = 0, low = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (high + 0.05) / (low + 0.05);
}

const light = block(':root {');
const sun = block(":root[data-sun='on'] {");
const dark = block(":root[data-theme='dark'] {");
const inks = ['ink', 'faint', 'water', 'sill', 'ground', 'slab', 'sound', 'watch'];

describe('the color tokens', () => {
  test('black on white is 21:1 by the formula', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
  });

  test.each([['light', light], ['dark', dark], ['sun', sun]] as const)('of the %s theme stand out 7:1 on paper and on card', (_, tokens) => {
    expect([...tokens.keys()].sort()).toEqual([...inks, 'paper', 'card'].sort());
    for (const surface of ['paper', 'card']) {
      for (const ink of inks) {
        expect(contrast(tokens.get(ink) ?? '', tokens.get(surface) ?? ''), `${ink} on ${surface}`).toBeGreaterThanOrEqual(7);
      }
    }
  });

  test('stand out more in the sun than on the desk', () => {
    for (const ink of inks) expect(contrast(sun.get(ink) ?? '', sun.get('paper') ?? ''), ink).toBeGreaterThan(contrast(light.get(ink) ?? '', light.get('paper') ?? ''));
    expect(contrast(sun.get('ink') ?? '', sun.get('paper') ?? '')).toBeCloseTo(21, 5);
  });

  test('are the same whether dark is chosen or comes from the system', () => {
    expect(block(":root:not([data-theme='light']) {")).toEqual(dark);
  });

  test('are named nowhere else', () => {
    const named = /#[0-9a-f]{3,8}\b(?=[^"']*;)|\b(rgb|hsl|oklch|lab)a?\(|:\s*(white|black|red|blue|green|gray|grey)\b/i;
    const files = readdirSync(src, { recursive: true, encoding: 'utf8' }).filter((f) => f.endsWith('.css') && !f.endsWith('tokens.css'));
    expect(files.length).toBeGreaterThan(5);
    expect(files.filter((f) => named.test(readFileSync(path.join(src, f), 'utf8')))).toEqual([]);
  });
});
