import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { methodReadme } from './testing/methodReadme.ts';
import { casesOf, HELPERS, methodFiles, methodsOf } from './testing/methodTable.ts';

describe('table of methods', () => {
  it('every file of a method folder documents a method with its source, or is named as a part of one', () => {
    const files = methodFiles();
    const without = files.filter((file) => methodsOf(file).length === 0);
    expect(without.filter((file) => !(file in HELPERS))).toEqual([]);
    expect(Object.keys(HELPERS).filter((file) => !without.includes(file))).toEqual([]);
    for (const method of files.flatMap(methodsOf)) {
      expect(method.what.length, `${method.file} ${method.name}`).toBeGreaterThan(10);
      expect(method.source.length, `${method.file} ${method.name}`).toBeGreaterThan(3);
    }
  });

  it('finds the cases that a block names: a list, a span, a whole fixture', () => {
    expect(casesOf('fixtures/runoff/travelTime.json, rows 6.1 and 6.4, 1e-4').map(({ row }) => row)).toEqual(['6.1', '6.4']);
    expect(casesOf('fixtures/runoff/rational.json, rows 4.1 to 4.6, 0.01 %').map(({ row }) => row)).toEqual(['4.1', '4.2', '4.3', '4.5', '4.6']);
    expect(casesOf('fixtures/gutter/verticalLeaders.csv, all 9 rows').map(({ row }) => row)).toEqual(['11.1']);
    expect(casesOf('its own equation, 1e-9')).toEqual([]);
  });

  it('README.md is the table of today', () => {
    expect(readFileSync(new URL('../README.md', import.meta.url), 'utf8') === methodReadme(), 'packages/calc/README.md is stale: node -C development --import @oxc-node/core/register packages/calc/bench/writeReadme.ts').toBe(true);
  });
});
