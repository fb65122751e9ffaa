import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';

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
    const changed = await ours.owner.agent.patch('/api/v1/company').set('If-Match', '"1"').send({ responsibleName: 'A. Person' }).expect(200);
    expect(changed.body).toMatchObject({ responsibleName: 'A. Person', version: 2, name: before.body.name });
    expect(changed.headers['etag']).toBe('"2"');
    const stale = await ours.owner.agent.patch('/api/v1/company').set('If-Match', '"1"').send({ responsibleName: 'Late' }).expect(412);
    expect(stale.body).toMatchObject({ code: 'conflict.stale', status: 412 });
    await ours.owner.agent.patch('/api/v1/company').send({ responsibleName: 'None' }).expect(428);
    const after = await ours.crew.agent.get('/api/v1/company').expect(200);
    expect(after.body).toMatchObject({ responsibleName: 'A. Person', version: 2 });
  });

  it('is not changed by an estimator', async () => {
    const refused = await ours.estimator.agent.patch('/api/v1/company').set('If-Match', '"2"').set(key()).send({ name: 'Mine' }).expect(403);
    expect(refused.headers['content-type']).toMatch(/^application\/problem\+json/);
    expect(refused.body.code).toBe('auth.forbidden');
  });
});
