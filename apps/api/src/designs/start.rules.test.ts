import { readFileSync } from 'node:fs';
import type { DesignDocument } from '@yardfall/calc';
import { readDesignDocument } from '@yardfall/contracts';
import { expect, test } from 'vitest';
import { ternHollowSurvey } from '../seed/sites/ternHollow.survey.ts';
import { startDocument, underLimits } from './start.rules.ts';

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

test('what was pinned in the yard stands on the plan of the document', async () => {
  const pinned = { ...ternHollowSurvey, pins: [{ point: 'Slider track', x: 0, y: 0.5 }] };
  const { document } = await readDesignDocument(startDocument('Patio', { content: pinned, stamp }, rain));
  expect(document.site.plan).toEqual({ picture: null, north: null, shapes: [] });
  expect(document.site.spotLevels.find(({ name }) => name === 'Slider track')?.position).toEqual({ x: 0, y: 0.5 });
  expect(document.site.spotLevels.filter(({ position }) => position !== null)).toHaveLength(1);
});

test('the closure of the survey and the limits of the company come along', () => {
  const limits = [{ limit: 'G1', pass: 0.02, fail: 0.01, by: 'Ines', at: '2031-03-04T15:30:00Z', why: '' }];
  const document = startDocument('Patio', { content: ternHollowSurvey, stamp }, rain, limits);
  expect(document.limits).toEqual(limits);
  expect(document.site.closure?.setUps).toBeGreaterThan(0);
  expect(Math.abs(document.site.closure?.misclosure ?? NaN)).toBeLessThan(0.01);
});

test('a document that was sent stands under the limits of the company, one of version 1 too', () => {
  const limits = [{ limit: 'G1', pass: 0.02, fail: 0.01, by: 'Ines', at: '2031-03-04T15:30:00Z', why: '' }];
  const own = { ...seeded, limits: [{ ...limits[0], pass: 0 }] };
  expect(underLimits(own, limits)).toEqual({ ...seeded, limits });
  const old = JSON.parse(readFileSync(new URL('../../../../packages/calc/fixtures/documents/ridgeback.version-1.json', import.meta.url), 'utf8')) as unknown;
  expect(underLimits(old, limits)).toMatchObject({ version: 2, limits });
  expect(underLimits(7, limits)).toBe(7);
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
