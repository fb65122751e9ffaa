import { readFileSync } from 'node:fs';
import type { DesignDocument } from '@yardfall/calc';
import { readDesignDocument } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import { ternHollowSurvey } from '../seed/sites/ternHollow.survey.ts';
import { startDocument } from './start.rules.ts';

const seeded = JSON.parse(readFileSync(new URL('../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
const stamp = { id: '01930000-0000-7000-8000-000000000001', sha256: 'a'.repeat(64), takenAt: '2026-01-01T00:00:00Z' };
const rain = { content: seeded.rain.table, stamp };

test('levels and rain of the job become the site of the document, with the stamps of their sources', async () => {
  const document = startDocument('Patio', { content: ternHollowSurvey, stamp }, rain);
  const { document: read } = await readDesignDocument(document);
  expect(read.sources).toEqual({ survey: stamp, rain: stamp });
  const [sill] = read.site.sills;
  expect(sill).toMatchObject({ name: 'Slider track', lowSpot: 'L1' });
  expect(sill?.level).toBeCloseTo(seeded.site.sills[0]?.level ?? NaN, 5);
  expect(read.site.lowSpots[0]?.rimLevel).toBeCloseTo(seeded.site.lowSpots[0]?.rimLevel ?? NaN, 5);
  expect(read.site.candidateOutlets.map(({ name }) => name)).toEqual(['Street gutter flow line', 'Easement swale flow line']);
  expect(read.system.parts).toEqual([]);
  expect([read.rain.designReturnPeriod, read.rain.checkReturnPeriod]).toEqual([25, 100]);
});

test('without a survey there is rain and an empty yard', async () => {
  const { document } = await readDesignDocument(startDocument('Patio', null, rain));
  expect(document.site.sills).toEqual([]);
  expect(document.sources.survey).toBeNull();
});

test('a table without 25 and 100 years gives the nearest that it has', () => {
  const table = { ...seeded.rain.table, returnPeriods: [2, 10], depths: seeded.rain.table.depths.map((row) => row.slice(0, 2)) };
  const { rain: made } = startDocument('Patio', null, { content: table, stamp });
  expect([made.designReturnPeriod, made.checkReturnPeriod]).toEqual([10, 10]);
});
