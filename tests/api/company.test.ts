import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { draftRevision } from '../support/builders.ts';

describe('the company', () => {
  let test: TestApp;
  let ours: TestCompany;

  beforeAll(async () => {
    test = await startApp();
    ours = await makeCompany(test);
  });
  afterAll(() => test.close());

  it('is read with an ETag and changed with If-Match, once', async () => {
    const before = await ours.owner.agent.get('/api/v1/company').expect(200);
    expect(before.headers['etag']).toBe('"1"');
    const changed = await ours.owner.agent.patch('/api/v1/company').set('If-Match', '"1"').send({ responsibleName: 'A. Person', phone: '919-555-0199' }).expect(200);
    expect(changed.body).toMatchObject({ responsibleName: 'A. Person', version: 2, name: before.body.name });
    expect(changed.headers['etag']).toBe('"2"');
    const stale = await ours.owner.agent.patch('/api/v1/company').set('If-Match', '"1"').send({ responsibleName: 'Late' }).expect(412);
    expect(stale.body).toMatchObject({ code: 'conflict.stale', status: 412 });
    await ours.owner.agent.patch('/api/v1/company').send({ responsibleName: 'None' }).expect(428);
    const after = await ours.crew.agent.get('/api/v1/company').expect(200);
    expect(after.body).toMatchObject({ responsibleName: 'A. Person', phone: '919-555-0199', version: 2 });
  });

  it('is not changed by an estimator', async () => {
    const refused = await ours.estimator.agent.patch('/api/v1/company').set('If-Match', '"2"').set(key()).send({ name: 'Mine' }).expect(403);
    expect(refused.headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(refused.body.code).toBe('auth.forbidden');
  });

  const limit = { limit: 'G1', pass: 0.02, fail: 0.01, why: '' };
  const set = (limits: readonly object[], version: number) => ours.owner.agent.patch('/api/v1/company').set('If-Match', `"${String(version)}"`).set(key()).send({ limits });

  it('sets limits of the checks, with who and when, and a looser one only with a reason', async () => {
    const changed = await set([limit], 2).expect(200);
    const [held] = changed.body.settings.limits;
    expect(held).toMatchObject({ ...limit, by: 'Test owner' });
    const refused = await set([limit, { ...limit, limit: 'B1', pass: 20, fail: 30 }], 3).expect(422);
    expect(refused.body).toMatchObject({ code: 'document.invalid', issues: [{ path: '/limits/1/why', message: 'document.limitNeedsReason' }] });
    await set([{ ...limit, limit: 'G99' }], 3).expect(422);
    await set([{ ...limit, by: 'somebody else' }], 3).expect(400);
    const looser = await set([limit, { limit: 'B1', pass: 20, fail: 30, why: 'one small pump in a wide basin' }], 3).expect(200);
    expect(looser.body.settings.limits[0]).toEqual(held);
    const { rows } = await test.owner.query(`SELECT params FROM audit_entry WHERE company_id = $1 AND action = 'company.updated' ORDER BY id DESC LIMIT 1`, [ours.id]);
    expect(rows[0].params).toMatchObject({ fields: 'limits', limits: 'G1 0.02 0.01; B1 20 30' });
  });

  it('a new design is judged by them, whatever the document that is sent says; a draft does not change them', async () => {
    const { revision } = await draftRevision(ours);
    expect(revision.document.limits.map(({ limit: id, by }) => [id, by])).toEqual([['G1', 'Test owner'], ['B1', 'Test owner']]);
    const finding = revision.evaluation?.findings.find(({ check }) => check === 'G1');
    expect(finding).toMatchObject({ code: 'G1.small', limit: { pass: 0.02, fail: 0.01, by: 'Test owner', why: '' } });
    const url = `/api/v1/jobs/${revision.jobId}/revisions/${revision.id}/operations`;
    const refused = await ours.estimator.agent.post(url).set(key()).send({ base: revision.version, operations: [{ kind: 'replace', path: ['limits'], value: [] }] }).expect(403);
    expect(refused.body.code).toBe('auth.forbidden');
  });
});
