import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { INCH } from '../common/constants.ts';
import type { DesignDocument } from '../document/document.ts';
import { alternatingBlock } from '../rain/alternatingBlock.ts';
import { handModel, handOutage, handPumpFlow, handStore, type HandModel } from './handModel.ts';

const site = JSON.parse(readFileSync(new URL('../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
const lowSpot = site.site.lowSpots[0]!;
const sillLevel = site.site.sills[0]!.level;
const areas = site.site.catchments.map((item) => ({ roof: item.surface === 'roof', effective: item.area * item.coefficient }));
const withRoof = areas.reduce((sum, { effective }) => sum + effective, 0);
const diverted = areas.reduce((sum, { roof, effective }) => sum + (roof ? 0 : effective), 0);

function hand(returnPeriod: number, runoffArea: number, gpm: number): HandModel {
  const { table, storm } = site.rain;
  const blocks = alternatingBlock(table, returnPeriod, storm.duration, storm.block);
  return { lowSpot, sillLevel, runoffArea, pumpFlow: handPumpFlow(gpm), store: handStore, blocks, block: storm.block };
}

// Source: the trade's worked example of Tern Hollow (ours, invented site and rain), freeboards at the sill in inches for 2, 10, 25, 100 years.
const table: readonly [name: string, area: number, gpm: number, freeboards: readonly [number, number, number, number]][] = [
  ['nothing', withRoof, 0, [-1.08, -1.22, -1.29, -1.37]],
  ['roof diverted only', diverted, 0, [-0.71, -1.0, -1.05, -1.11]],
  ['A and 1 1/2 in, roof on', withRoof, 30.2, [1.33, 0.2, -0.43, -0.84]],
  ['B and 2 in, roof on', withRoof, 51.0, [2.46, 1.2, 0.72, 0.02]],
  ['C and 1 1/4 in, diverted', diverted, 35.0, [3.72, 2.48, 1.95, 1.4]],
  ['A and 1 1/2 in, diverted', diverted, 30.2, [3.31, 2.11, 1.65, 1.11]],
  ['A and 2 in, diverted', diverted, 38.6, [3.72, 2.66, 2.2, 1.59]],
];
const periods = [2, 10, 25, 100] as const;

describe('hand model of Tern Hollow', () => {
  test.each(table.flatMap(([name, area, gpm, row]) => periods.map((period, i) => [name, period, area, gpm, row[i]!] as const)))(
    '%s, %i years: within 0.05 in of the printed cell', (_, period, area, gpm, printed) => {
      const { freeboard } = handModel(hand(period, area, gpm));
      expect(Math.abs(freeboard / INCH - printed)).toBeLessThanOrEqual(0.05);
    },
  );

  test('meets the printed outages of the 10-year storm within 0.05 in', () => {
    const model = hand(10, diverted, 30.2);
    const peak = 43200;
    expect(Math.abs(handModel({ ...model, outage: [peak, peak + 900] }).freeboard / INCH - 0.38)).toBeLessThanOrEqual(0.05);
    // The text says "about -0.3": half of its last digit.
    expect(Math.abs(handModel({ ...model, outage: [peak - 900, peak + 900] }).freeboard / INCH + 0.3)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(handOutage(model, 900) / INCH - 0.3)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(handOutage(model, 1800) / INCH + 0.33)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(handOutage(model, 3600) / INCH + 0.72)).toBeLessThanOrEqual(0.05);
  });
});
