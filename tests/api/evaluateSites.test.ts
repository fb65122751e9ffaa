import { readdirSync, readFileSync } from 'node:fs';
import supertest from 'supertest';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { evaluateText } from '../../apps/cli/src/evaluate.ts';
import { makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 180_000, hookTimeout: 120_000 });

const folder = new URL('../../prisma/seed/sites/', import.meta.url);
const sites = readdirSync(folder).filter((file) => file.endsWith('.json'));
const textOf = (file: string): string => readFileSync(new URL(file, folder), 'utf8');

/** Stops are told by the exit code; a referral is no stop, and says so itself. */
const stopped: readonly string[] = ['mews-at-plover.json'];

describe('evaluating the demo sites', () => {
  let test: TestApp;
  let ours: TestCompany;
  beforeAll(async () => {
    test = await startApp();
    ours = await makeCompany(test);
  });
  afterAll(() => test.close());

  it.each(sites)('%s: the endpoint and the command line give the same answer', async (file) => {
    const line = await evaluateText(textOf(file), { kind: 'json', language: 'en', units: 'us', level: 'plain' });
    expect(line.error).toBe('');
    expect(line.code).toBe(stopped.includes(file) ? 2 : 0);
    const { body } = await ours.crew.agent.post('/api/v1/evaluate').send({ document: JSON.parse(textOf(file)) as unknown }).expect(200);
    expect({ documentSha256: body.documentSha256, ...body.evaluation }).toEqual(JSON.parse(line.out));
  });

  it.each(sites)('%s: in words it ends with whose calculation it is, in both languages', async (file) => {
    const english = await evaluateText(textOf(file), { kind: 'text', language: 'en', units: 'us', level: 'plain' });
    const spanish = await evaluateText(textOf(file), { kind: 'text', language: 'es', units: 'metric', level: 'plain' });
    expect(english.out.split('\n').at(-1)).toMatch(/^The contractor's own calculation for this job.*Not prepared, reviewed or sealed by a licensed engineer; valid only for the stated levels, rain and condition\.$/);
    expect(spanish.out.split('\n').at(-1)).toMatch(/^Cálculo propio del contratista.*No preparado, revisado ni sellado por un ingeniero con licencia/);
    expect(english.out).toContain('Findings');
    expect(english.out.includes('REFER R:')).toBe(file === 'sallow-bend.json');
  });

  it('is for those who are signed in', async () => {
    const { body } = await supertest(test.server).post('/api/v1/evaluate').send({ document: JSON.parse(textOf('ridgeback.json')) as unknown }).expect(401);
    expect(body.code).toBe('auth.required');
  });
});

describe('a service that allows a tenth of a second', () => {
  let test: TestApp;
  let ours: TestCompany;
  beforeAll(async () => {
    test = await startApp('2026-03-02T15:00:00Z', { EVALUATE_LIMIT: '100' });
    ours = await makeCompany(test);
  });
  afterAll(() => test.close());

  it('gives up, says that it is busy, and goes on answering', async () => {
    const { body } = await ours.crew.agent.post('/api/v1/evaluate').send({ document: JSON.parse(textOf('tern-hollow.json')) as unknown }).expect(503);
    expect(body.code).toBe('busy');
    await supertest(test.server).get('/health').expect(200);
  });
});
