import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { demoSite } from '../testing/sites.ts';
import { parseAtlas14 } from '../rain/parseAtlas14.ts';
import { checkDocument } from './check.ts';

/** A point table of NOAA Atlas 14 runs to 60 days (source beside the fixture). */
describe('a design on a table of the NOAA Atlas 14 server', () => {
  test('is taken with all its durations', () => {
    const { table } = parseAtlas14(readFileSync(new URL('../../fixtures/rain/pulaskiDepthInches.csv', import.meta.url)));
    const document = demoSite('tern-hollow');
    expect(table.durations.at(-1)).toBe(60 * 86_400);
    expect(() => checkDocument({ ...document, rain: { ...document.rain, table } })).not.toThrow();
  });
});
