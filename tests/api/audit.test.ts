import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SealService } from '../../apps/api/src/audit/seal.service.ts';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';

describe('the trail', () => {
  let test: TestApp;
  let ours: TestCompany;
  let theirs: TestCompany;
  beforeAll(async () => {
    test = await startApp();
    ours = await makeCompany(test, 'Our Yards');
    theirs = await makeCompany(test, 'Their Yards');
  });
  afterAll(() => test.close());

  const register = async (company: TestCompany): Promise<string> => {
    const id = randomUUID();
    test.clock.forward(1);
    await company.crew.agent.post('/api/v1/devices').set(key()).send({ id, name: 'Phone' }).expect(201);
    return id;
  };
  const seal = () => test.app.get(SealService).sealAll();
  const verify = async (company: TestCompany) => (await company.owner.agent.get('/api/v1/audit/verify').expect(200)).body as Record<string, unknown>;

  it('lists newest first, in pages that leave nothing out', async () => {
    const made: string[] = [];
    for (let count = 0; count < 7; count += 1) made.push(await register(ours));
    const seen: string[] = [];
    let cursor: string | null = '';
    while (cursor !== null) {
      const { body } = await ours.estimator.agent.get('/api/v1/audit').query({ limit: 3, ...(cursor === '' ? {} : { cursor }) }).expect(200);
      seen.push(...(body.items as { action: string; subjectId: string }[]).filter(({ action }) => action === 'device.registered').map(({ subjectId }) => subjectId));
      cursor = body.next as string | null;
    }
    expect(seen).toEqual([...made].reverse());
    await ours.estimator.agent.get('/api/v1/audit').query({ cursor: 'bm90IGl0' }).expect(400);
  });

  it('says who, and holds a name only by its reference', async () => {
    const { body } = await ours.owner.agent.get('/api/v1/audit').query({ limit: 1 }).expect(200);
    expect(body.items[0]).toMatchObject({ actorKind: 'member', actorId: ours.crew.id, actorName: 'Test crew', action: 'device.registered', params: {}, sealed: false });
  });

  it('is sealed after the commit into one chain a company, and verifies', async () => {
    await register(theirs);
    expect((await verify(ours))['sealed']).toBe(0);
    expect(await seal()).toBeGreaterThan(8);
    const first = await verify(ours);
    expect(first).toMatchObject({ unsealed: 0, broken: 0, firstBroken: null });
    await register(ours);
    expect(await verify(ours)).toMatchObject({ sealed: first['sealed'], unsealed: 1, broken: 0 });
    expect(await seal()).toBe(1);
    expect(await verify(ours)).toMatchObject({ sealed: Number(first['sealed']) + 1, unsealed: 0, broken: 0 });
    expect(await verify(theirs)).toMatchObject({ unsealed: 0, broken: 0 });
  });

  it('shows an entry that was changed or taken out behind our back', async () => {
    const { rows } = await test.owner.query<{ id: string; seal_no: string }>('SELECT id, seal_no FROM audit_entry WHERE company_id = $1 ORDER BY seal_no', [ours.id]);
    const [second, fifth] = [rows[1], rows[4]];
    if (second === undefined || fifth === undefined) throw new Error('too few entries');
    const tamper = async (sql: string, id: string): Promise<void> => {
      await test.owner.query(`BEGIN; SET LOCAL session_replication_role = replica; ${sql.replace('$1', `'${id}'`)}; COMMIT`);
    };
    await tamper(`UPDATE audit_entry SET params = '{"changed": 1}' WHERE id = $1`, second.id);
    expect(await verify(ours)).toMatchObject({ sealed: rows.length - 1, broken: 1, firstBroken: second.id });
    await tamper('DELETE FROM audit_entry WHERE id = $1', fifth.id);
    expect(await verify(ours)).toMatchObject({ sealed: rows.length - 3, broken: 2, firstBroken: second.id });
    expect(await verify(theirs)).toMatchObject({ broken: 0 });
  });
});
