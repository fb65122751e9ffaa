import { longRecord, optionsFront, parseSeries, type Choice, type CostIndex, type DesignDocument } from '@yardfall/calc';
import type { LibraryEntry, RainRecordRow, ResponseOf, Study, studies as api } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Worker } from '../../apps/api/src/common/worker.ts';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { draftRevision, get, post, priceEverything, siteDocument, type WithRevision } from '../support/builders.ts';

let test: TestApp;
let ours: TestCompany;
let made: WithRevision;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  made = await draftRevision(ours);
});
afterAll(() => test.close());

type Detail = ResponseOf<typeof api.read>;
const drain = () => test.app.get(Worker).drain();
const read = ({ id }: { readonly id: string }) => get<Detail>(ours.estimator.agent, `/jobs/${made.job.id}/studies/${id}`);
const ask = (kind: 'options' | 'record', body: object) => post<Study>(ours.estimator.agent, `/jobs/${made.job.id}/revisions/${made.revision.id}/studies/${kind}`, body, 202);
const upload = (text: string, name = 'Gauge') =>
  ours.estimator.agent.post('/api/v1/rain-records').set(key()).field('meta', JSON.stringify({ name })).attach('file', Buffer.from(text), { filename: 'gauge.csv', contentType: 'text/csv' });

/** Hours of rain as a file of our own; a day with one burst each month of so many years. */
function monthly(years: number): string {
  const rows = ['time,depth (mm)'];
  for (let month = 0; month < years * 12; month += 1) {
    const day = `${String(1990 + Math.floor(month / 12))}-${String(month % 12 + 1).padStart(2, '0')}-10`;
    for (let hour = 0; hour < 24; hour += 1) rows.push(`${day} ${String(hour).padStart(2, '0')}:00,${hour === 14 ? 30 + (month * 7) % 60 : 0}`);
  }
  return rows.join('\n');
}

/** Pumps of an invented list: the one drawn, scaled. */
async function pumps(...scales: readonly number[]): Promise<LibraryEntry[]> {
  const drawn = siteDocument('tern-hollow').system.parts.find((part) => part.kind === 'pump');
  if (drawn?.kind !== 'pump') throw new Error('the site has no pump');
  return Promise.all(scales.map((scale) => post<LibraryEntry>(ours.estimator.agent, '/library', {
    name: `Pump x ${String(scale)}`, source: 'Invented', priceCode: `pump.${String(scale)}`,
    content: { kind: 'pump', curve: drawn.curve.map(({ flow, head }) => ({ flow: flow * scale, head })), solids: drawn.solids, minSubmergence: drawn.minSubmergence },
  }, 201)));
}

describe('the options of a design', () => {
  it('are looked for by the queue, by an order of costs until every price is there, and then by money', async () => {
    const entries = await pumps(0.5, 1.6);
    const request = { picks: [{ part: 'M1', entries: entries.map(({ id }) => id) }], diversions: ['G1'] };
    const asked = await ask('options', request);
    expect(asked).toMatchObject({ kind: 'options', status: 'waiting', progress: 0, documentSha256: made.revision.documentSha256, by: 'Test estimator' });
    await drain();
    const first = await read(asked);
    expect(first).toMatchObject({ status: 'done', progress: 1, problem: null });
    const result = first.result as { front: unknown; choices: Choice[]; cost: { kind: string; index: CostIndex; unpriced: string[] } };
    expect(result.cost.kind).toBe('order');
    expect(result.cost.unpriced).toContain('pump.0.5');
    expect(result.choices.map(({ id, alternatives }) => [id, alternatives.length])).toEqual([['G1', 2], ['M1:pump', 3]]);
    // The same search in one row, without queue, thread or slices.
    expect(result.front).toEqual(optionsFront(made.revision.document as DesignDocument, result.choices, result.cost.index));

    await priceEverything(test, ours);
    for (const [scale, dollars] of [[0.5, 190], [1.6, 480]] as const) {
      await ours.owner.agent.put(`/api/v1/price-items/pump.${String(scale)}`).set(key())
        .send({ name: 'Pump', kind: 'material', unit: 'each', unitCost: dollars * 10_000, hoursPerUnit: 0, taxable: true, active: true }).expect(200);
    }
    const again = await ask('options', request);
    await drain();
    const money = (await read(again)).result as typeof result;
    expect([money.cost.kind, money.cost.unpriced]).toEqual(['money', []]);
    const costs = money.cost.index.alternatives['M1:pump'] ?? {};
    const [small, great] = entries.map(({ id }) => costs[id] ?? Number.NaN);
    // Two pumps differ by their prices alone: $480 - $190.
    expect((great ?? 0) - (small ?? 0)).toBe(29_000);
    expect(costs['drawn']).toBe(0);
  });

  it('are settled when they are asked: a later change of the library changes nothing of them', async () => {
    const [entry] = await pumps(1.2);
    if (entry === undefined) throw new Error('no entry');
    const asked = await ask('options', { picks: [{ part: 'M1', entries: [entry.id] }], diversions: [] });
    await ours.owner.agent.put(`/api/v1/library/${entry.id}`).set(key()).set('If-Match', '"1"')
      .send({ name: 'Other name', source: '', priceCode: null, content: entry.content, active: false }).expect(200);
    await drain();
    const { result } = await read(asked);
    expect((result as { choices: Choice[] }).choices[0]?.alternatives.map(({ name }) => name)).toContain('Pump x 1.2');
  });

  it('with nothing to choose from fail in words', async () => {
    const asked = await ask('options', { picks: [], diversions: [] });
    await drain();
    expect(await read(asked)).toMatchObject({ status: 'failed', problem: { code: 'options.count' }, result: null });
  });
});

describe('years of recorded rain', () => {
  it('are kept as they came, with what they span', async () => {
    const row = (await upload(monthly(2)).expect(201)).body as RainRecordRow;
    expect(row).toMatchObject({ name: 'Gauge', originalName: 'gauge.csv', step: 3600, from: '1990-01-10' });
    const { items } = await get<{ items: RainRecordRow[] }>(ours.crew.agent, '/rain-records');
    expect(items[0]).toEqual(row);
    expect((await upload('time,depth (mm)\n2020-06-01 14:15,3\n2020-06-01 14:30,2\n').expect(201)).body).toMatchObject({ step: 900 });
  });

  it('that cannot be read are refused with line and column, and nothing is stored', async () => {
    const before = (await get<{ items: RainRecordRow[] }>(ours.estimator.agent, '/rain-records')).items.length;
    const { body } = await upload('time,depth (mm)\n2020-06-01 14:00,wet\n').expect(422);
    expect(body).toMatchObject({ code: 'rain.unreadable', params: { line: 2, reason: 'record.notANumber' } });
    expect((await get<{ items: RainRecordRow[] }>(ours.estimator.agent, '/rain-records')).items.length).toBe(before);
  });

  it('run through the design as the engine runs them', async () => {
    const text = monthly(2);
    const { id } = (await upload(text, 'Two years').expect(201)).body as RainRecordRow;
    const asked = await ask('record', { recordId: id, reportedPerYear: null });
    await drain();
    const study = await read(asked);
    expect(study).toMatchObject({ kind: 'record', status: 'done', progress: 1 });
    const own = longRecord(made.revision.document as DesignDocument, parseSeries(text, { name: 'Two years' }, 60));
    expect((study.result as { result: unknown }).result).toEqual(JSON.parse(JSON.stringify(own)));
    expect(own.sills[0]?.withoutSystem?.high).toBeGreaterThan(0);
  });

  it('can be stopped while they wait and while they run; what was stopped has no result', async () => {
    const { id: recordId } = (await upload(monthly(60), 'Sixty years').expect(201)).body as RainRecordRow;
    const waiting = await ask('record', { recordId, reportedPerYear: null });
    const stop = (study: Study) => ours.owner.agent.post(`/api/v1/jobs/${made.job.id}/studies/${study.id}/stop`).set(key()).send({});
    expect((await stop(waiting).expect(200)).body).toMatchObject({ status: 'stopped' });
    // With a fit the record is run dozens of times: long enough to be stopped.
    const running = await ask('record', { recordId, reportedPerYear: 1 });
    const drained = drain();
    while ((await read(running)).status === 'waiting') await new Promise((resolve) => { setTimeout(resolve, 50); });
    expect((await read(running)).status).toBe('running');
    await stop(running).expect(200);
    await drained;
    for (const study of [waiting, running]) expect(await read(study)).toMatchObject({ status: 'stopped', result: null });
    expect((await stop(running).expect(409)).body.code).toBe('conflict.state');
  });
});

describe('work of a process that died', () => {
  /** The study's job as a worker holds it in the middle of its work. */
  const holdAs = (worker: string, id: string) => test.owner.query(
    `UPDATE graphile_worker._private_jobs SET locked_by = $1, locked_at = now() - interval '1 minute', attempts = 1 WHERE key = $2`, [worker, `studies.run:${id}`]).then(({ rowCount }) => expect(rowCount).toBe(1));

  it('begins anew soon, and what a living worker holds stays with it', async () => {
    const worker = test.app.get(Worker);
    const { id: recordId } = (await upload(monthly(2), 'Two more years').expect(201)).body as RainRecordRow;
    const asked = await ask('record', { recordId, reportedPerYear: null });
    await holdAs('worker-dead', asked.id);
    await drain();
    expect(await read(asked)).toMatchObject({ status: 'waiting', result: null });

    // A process that lives shows itself by a lock of its worker's name.
    const living = await test.owner.connect();
    await living.query(`SELECT pg_advisory_lock(7102115, hashtext('worker-dead'))`);
    expect(await worker.freeDead()).toEqual([]);
    living.release(true);
    await expect.poll(() => worker.freeDead(), { timeout: 10_000 }).toEqual(['worker-dead']);
    await drain();
    expect(await read(asked)).toMatchObject({ status: 'done', progress: 1 });
  });

  it('is read by its schema: a request that is no request is refused and not run', async () => {
    const { id: recordId } = (await upload(monthly(1), 'One year').expect(201)).body as RainRecordRow;
    const asked = await ask('record', { recordId, reportedPerYear: null });
    await test.owner.query('UPDATE study SET request = $1 WHERE id = $2', [Buffer.from(JSON.stringify({ recordId, reportedPerYear: 'often' })), asked.id]);
    await drain();
    expect((await test.owner.query<{ status: string }>('SELECT status FROM study WHERE id = $1', [asked.id])).rows[0]?.status).toBe('waiting');
  });
});

it('a study is not for the crew, whose eyes see no cost', async () => {
  const answer = await ours.crew.agent.get(`/api/v1/jobs/${made.job.id}/revisions/${made.revision.id}/studies`);
  expect([answer.status, answer.body.code]).toEqual([403, 'auth.forbidden']);
});
