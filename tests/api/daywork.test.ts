import { randomUUID } from 'node:crypto';
import type { DayworkEntry, StoredDaywork } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, newJob } from '../support/builders.ts';

describe('time and materials', () => {
  let test: TestApp;
  let ours: TestCompany;
  let jobId: string;

  beforeAll(async () => {
    test = await startApp();
    ours = await makeCompany(test);
    jobId = (await newJob(ours)).id;
  }, 120_000);
  afterAll(() => test.close());

  const send = (who: TestCompany['owner'], entries: readonly DayworkEntry[]) => who.agent.post(`/api/v1/jobs/${jobId}/daywork`).set(key()).send({ entries });
  const started: DayworkEntry = { kind: 'started', id: randomUUID(), at: '2026-11-24T12:00:00.000Z', task: 'C' };
  const stopped: DayworkEntry = { kind: 'stopped', id: randomUUID(), at: '2026-11-24T15:30:00.000Z' };

  it('is stored once however often and in whatever order it arrives, and stays as it was noted', async () => {
    await send(ours.estimator, [stopped]).expect(200);
    await send(ours.estimator, [started, stopped]).expect(200);
    await send(ours.estimator, [started]).expect(200);
    const { items } = await get<{ items: StoredDaywork[] }>(ours.owner.agent, `/jobs/${jobId}/daywork`);
    expect(items.map(({ entry, memberId }) => [entry, memberId])).toEqual([[started, ours.estimator.id], [stopped, ours.estimator.id]]);
    const other = await send(ours.estimator, [{ ...started, task: 'E' }]).expect(409);
    expect(other.body).toMatchObject({ code: 'conflict.state', params: { entry: started.id } });
    // Nor does another person write over it.
    await send(ours.owner, [started]).expect(409);
    expect((await get<{ items: StoredDaywork[] }>(ours.owner.agent, `/jobs/${jobId}/daywork`)).items).toEqual(items);
  });

  it('keeps nothing of a batch with an entry that cannot be kept', async () => {
    const fresh: DayworkEntry = { kind: 'used', id: randomUUID(), at: '2026-11-24T13:00:00.000Z', what: '4 in pipe', amount: 20, unit: 'ft', note: '' };
    await send(ours.estimator, [fresh, { ...stopped, at: '2026-11-24T16:00:00.000Z' }]).expect(409);
    await send(ours.estimator, [{ ...fresh, amount: -1 }]).expect(400);
    const { items } = await get<{ items: StoredDaywork[] }>(ours.owner.agent, `/jobs/${jobId}/daywork`);
    expect(items.map(({ entry }) => entry.id)).toEqual([started.id, stopped.id]);
    await send(ours.estimator, [fresh]).expect(200);
  });

  it('a struck entry stays on record with its reason, in the trail too', async () => {
    await send(ours.estimator, [{ kind: 'struck', id: randomUUID(), at: '2026-11-24T16:00:00.000Z', entry: started.id, reason: 'wrong job' }]).expect(200);
    const { rows } = await test.owner.query(`SELECT params FROM audit_entry WHERE company_id = $1 AND action = 'daywork.struck'`, [ours.id]);
    expect(rows).toEqual([{ params: expect.objectContaining({ reason: 'wrong job' }) as unknown }]);
    const { items } = await get<{ items: StoredDaywork[] }>(ours.owner.agent, `/jobs/${jobId}/daywork`);
    expect(items.map(({ entry }) => entry.kind)).toEqual(['started', 'used', 'stopped', 'struck']);
  });

  it('is nobody else\'s', async () => {
    const theirs = await makeCompany(test, 'Other Yards');
    const answer = await theirs.owner.agent.get(`/api/v1/jobs/${jobId}/daywork`);
    expect(answer.status).toBe(404);
  });
});
