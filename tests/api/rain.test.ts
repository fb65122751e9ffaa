import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { Job, RainTableRow } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { inRoot } from '../../tools/paths.mjs';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, newJob, post, siteDocument } from '../support/builders.ts';

let test: TestApp;
let ours: TestCompany;
let job: Job;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  job = await newJob(ours);
});
afterAll(() => test.close());

/** Point files of the NOAA Atlas 14 server; where each comes from stands beside it in *.source.txt. */
const atlas = (name: string) => readFileSync(path.join(inRoot('packages', 'calc', 'fixtures', 'rain'), name));
const upload = (bytes: Buffer, name = 'Pulaski', file = 'point.csv') =>
  ours.estimator.agent.post(`/api/v1/jobs/${job.id}/rain-tables/noaa`).set(key()).field('meta', JSON.stringify({ name })).attach('file', bytes, { filename: file, contentType: 'text/csv' });
const tables = async () => (await get<{ items: RainTableRow[] }>(ours.estimator.agent, `/jobs/${job.id}/rain-tables`)).items;

describe('the file of the NOAA server', () => {
  it.each(['pulaskiDepthInches.csv', 'annArborDepthInchesLimits.csv', 'pointIntensityMetric.csv'])('%s is read, and kept as it came', async (name) => {
    const made = (await upload(atlas(name), name.slice(0, 20), name).expect(201)).body as RainTableRow;
    expect(made).toMatchObject({ originalName: name, by: 'Test estimator', table: { illustrative: false } });
    expect(made.table.depths).toHaveLength(made.table.durations.length);
    const { rows } = await test.owner.query<{ original: Buffer }>('SELECT original FROM rain_table WHERE id = $1', [made.id]);
    expect(rows[0]?.original.equals(atlas(name))).toBe(true);
  });

  it('that is broken is refused with line and column, and nothing is stored', async () => {
    const before = (await tables()).length;
    const lines = atlas('pulaskiDepthInches.csv').toString('latin1').split('\n');
    const row = lines.findIndex((line) => line.startsWith('10-min'));
    const broken = lines.map((line, index) => (index === row ? line.replace(/,\s*[\d.]+/, ',abc') : line)).join('\n');
    const refused = await upload(Buffer.from(broken, 'latin1')).expect(422);
    expect(refused.body).toMatchObject({ code: 'rain.unreadable', params: { line: row + 1 } });
    expect(refused.body.params.column).toBeGreaterThan(1);
    expect(refused.body.issues[0].message).toMatch(/^Line \d+, column \d+: this is not a number\.$/);
    expect((await upload(Buffer.from('<!doctype html><html></html>')).expect(422)).body.code).toBe('rain.unreadable');
    expect((await upload(Buffer.alloc(0)).expect(422)).body.code).toBe('rain.unreadable');
    expect((await upload(Buffer.alloc(300_000, 'a')).expect(413)).body.code).toBe('request.tooLarge');
    expect(await tables()).toHaveLength(before);
  });
});

describe('a typed table', () => {
  it('gives the day by alternating block: its sum is the depth of the table', async () => {
    const { table } = siteDocument('tern-hollow').rain;
    const made = await post<RainTableRow>(ours.estimator.agent, `/jobs/${job.id}/rain-tables`, { name: 'Typed', table }, 201);
    const storm = await get<{ block: number; depths: number[]; total: number }>(ours.estimator.agent, `/jobs/${job.id}/rain-tables/${made.id}/storm?returnPeriod=25`);
    expect([storm.block, storm.depths.length]).toEqual([300, 288]);
    // 8.2 in of the invented table for 24 hours and 25 years; 0.81 in for its five minutes.
    expect(storm.total / 25.4).toBeCloseTo(8.2, 6);
    expect(Math.max(...storm.depths) / 25.4).toBeCloseTo(0.81, 6);
    await ours.estimator.agent.get(`/api/v1/jobs/${job.id}/rain-tables/${made.id}/storm?returnPeriod=1000`).expect(400);
  });

  it('that falls where it must rise is refused by row and column', async () => {
    const { table } = siteDocument('tern-hollow').rain;
    const depths = table.depths.map((row, r) => row.map((depth, c) => (r === 3 && c === 1 ? 0.1 : depth)));
    const refused = await ours.estimator.agent.post(`/api/v1/jobs/${job.id}/rain-tables`).set(key()).send({ name: 'Typed', table: { ...table, depths } }).expect(422);
    expect(refused.body).toMatchObject({ code: 'rain.unreadable', params: { reason: 'rain.table.longerIsShallower', line: 4, column: 2 } });
  });
});
