import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Housekeeping } from '../../apps/api/src/common/housekeeping.ts';
import { makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';

describe('a repeated key', () => {
  let test: TestApp;
  let ours: TestCompany;
  beforeAll(async () => {
    test = await startApp();
    ours = await makeCompany(test);
  });
  afterAll(() => test.close());

  const body = (email: string) => ({ name: 'Somebody', email, roles: ['crew'] });
  const invite = (key: string, sent: object, agent = ours.owner.agent) => agent.post('/api/v1/members').set('Idempotency-Key', key).send(sent);
  const count = async (email: string) => Number((await test.owner.query<{ n: string }>('SELECT count(*) AS n FROM member WHERE email = $1', [email])).rows[0]?.n);

  it('is wanted on every POST', async () => {
    const { body: problem } = await ours.owner.agent.post('/api/v1/members').send(body('none@example.test')).expect(400);
    expect(problem.code).toBe('idempotency.required');
    expect((await invite('short', body('none@example.test')).expect(400)).body.code).toBe('request.invalid');
    expect(await count('none@example.test')).toBe(0);
  });

  it('answers the same, and the effect happens once', async () => {
    const key = randomUUID();
    const first = await invite(key, body('once@example.test')).expect(201);
    const second = await invite(key, body('once@example.test')).expect(201);
    expect(second.body).toEqual(first.body);
    expect(await count('once@example.test')).toBe(1);
    const { rows } = await test.owner.query(`SELECT 1 FROM audit_entry WHERE action = 'member.invited' AND subject_id = $1`, [first.body.member.id]);
    expect(rows).toHaveLength(1);
  });

  it('with another body or on another route is refused', async () => {
    const key = randomUUID();
    await invite(key, body('first@example.test')).expect(201);
    expect((await invite(key, body('second@example.test')).expect(409)).body.code).toBe('idempotency.mismatch');
    expect(await count('second@example.test')).toBe(0);
    const elsewhere = await ours.owner.agent.post('/api/v1/devices').set('Idempotency-Key', key).send({ id: randomUUID(), name: 'Phone' }).expect(409);
    expect(elsewhere.body.code).toBe('idempotency.mismatch');
  });

  it('is free again when the first try failed', async () => {
    const key = randomUUID();
    await invite(key, body(ours.crew.email)).expect(409);
    await invite(key, body('again@example.test')).expect(201);
    expect(await count('again@example.test')).toBe(1);
  });

  it('belongs to one person', async () => {
    const key = randomUUID();
    const register = (agent: typeof ours.owner.agent, id: string) => agent.post('/api/v1/devices').set('Idempotency-Key', key).send({ id, name: 'Phone' });
    const [first, second] = [randomUUID(), randomUUID()];
    await register(ours.crew.agent, first).expect(201);
    expect((await register(ours.estimator.agent, second).expect(201)).body.id).toBe(second);
  });

  it('sent ten times at once happens once', async () => {
    const key = randomUUID();
    const answers = await Promise.all(Array.from({ length: 10 }, () => invite(key, body('crowd@example.test'))));
    expect(answers.map(({ status }) => status)).toEqual(Array.from({ length: 10 }, () => 201));
    expect(new Set(answers.map((answer) => JSON.stringify(answer.body))).size).toBe(1);
    expect(await count('crowd@example.test')).toBe(1);
  });

  it('is forgotten after 400 days, not before', async () => {
    const key = randomUUID();
    await invite(key, body('kept@example.test')).expect(201);
    const keys = async () => Number((await test.owner.query<{ n: string }>('SELECT count(*) AS n FROM idempotency_key')).rows[0]?.n);
    const before = await keys();
    test.clock.forward(400 * 86_400 - 60);
    await test.app.get(Housekeeping).run();
    expect(await keys()).toBe(before);
    test.clock.forward(120);
    await test.app.get(Housekeeping).run();
    expect(await keys()).toBe(0);
    test.clock.forward(-400 * 86_400 - 60);
  });

  it('keeps neither itself nor the answer readable in the database', async () => {
    const key = randomUUID();
    const { body: answer } = await invite(key, body('sealed@example.test')).expect(201);
    const { rows } = await test.owner.query<{ row: string }>(`SELECT encode(response, 'escape') || key AS row FROM idempotency_key`);
    const stored = rows.map(({ row }) => row).join('\n');
    expect(stored).not.toContain(key);
    expect(stored).not.toContain(new URL(answer.link as string).hash.slice(1));
    expect(stored).not.toContain('sealed@example.test');
  });
});
