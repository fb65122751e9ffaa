import { describe, expect, test } from 'vitest';
import { labelCodes } from './labels.ts';
import { section } from './section.ts';
import { pumpTable, sectionTable, stageTable, stormTable } from './table.ts';
import { evaluation, stormRun } from './testing/evaluation.ts';
import { only } from './testing/read.ts';
import { ternHollow } from './testing/tern-hollow.ts';
import { ft } from './testing/units.ts';

describe('tables for a reader who cannot see the drawing', () => {
  test('the section says each lettered thing once, beside the name of its part', () => {
    const drawn = section(ternHollow, evaluation);
    const table = sectionTable(ternHollow, evaluation, drawn);
    const lettered = drawn.items.filter((item) => item.kind === 'text' && item.part !== null);
    expect(table.rows.length).toBe(lettered.length + 1);
    const off = only(table.rows.filter(([, what]) => what?.code === 'drawing.off'));
    expect(off[0]?.params).toEqual({ value: 'Basin' });
    expect(off[1]?.params['level']).toBeCloseTo(ft(96.5), 9);
  });

  test('the shortfall is said even where the picture does not show the outlets', () => {
    const table = sectionTable(ternHollow, evaluation, section(ternHollow, evaluation, { window: 'house' }));
    expect(table.rows.filter(([, what]) => what?.code === 'drawing.shortfall')).toHaveLength(2);
  });

  test('every row has a cell for every column', () => {
    const spot = only(ternHollow.site.lowSpots);
    const pump = only(evaluation.results.pumps);
    for (const table of [stormTable(stormRun), pumpTable(pump), stageTable(spot)]) {
      expect(table.rows.length).toBeGreaterThan(3);
      for (const row of table.rows) expect(row).toHaveLength(table.columns.length);
    }
  });

  test('codes are listed once', () => {
    expect(new Set(labelCodes).size).toBe(labelCodes.length);
  });
});
