import { Validator } from '@seriousme/openapi-schema-validator';
import supertest from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allEndpoints } from '@yardfall/contracts';
import { startApp, type TestApp } from '../support/app.ts';

describe('the service itself', () => {
  let test: TestApp;
  beforeAll(async () => {
    test = await startApp();
  });
  afterAll(() => test.close());

  it('is alive, and ready under a role that cannot pass a row policy', async () => {
    await supertest(test.server).get('/health').expect(200, { ok: true });
    const { body } = await supertest(test.server).get('/ready').expect(200);
    expect(body).toEqual({ ready: true, database: { ok: true, code: 'reachable' }, migrations: { ok: true, code: 'applied' }, role: { ok: true, code: 'restricted' } });
  });

  it('is not ready while a migration is missing', async () => {
    await test.owner.query(`UPDATE _prisma_migrations SET rolled_back_at = now() WHERE migration_name LIKE '%_rules'`);
    const { body } = await supertest(test.server).get('/ready').expect(503).expect('Retry-After', '1');
    expect(body).toMatchObject({ code: 'busy', params: { migrations: 'pending', role: 'restricted' } });
    await test.owner.query('UPDATE _prisma_migrations SET rolled_back_at = NULL');
    await supertest(test.server).get('/ready').expect(200);
  });

  it('describes every endpoint in a valid OpenAPI 3.1 document', async () => {
    const { body } = await supertest(test.server).get('/api/v1/openapi.json').expect(200).expect('Content-Type', /application\/json/);
    const { valid, errors } = await new Validator().validate(structuredClone(body));
    expect(errors ?? []).toEqual([]);
    expect(valid).toBe(true);
    const operations = Object.values(body.paths as Record<string, Record<string, { operationId: string }>>).flatMap((path) => Object.values(path).map((operation) => operation.operationId));
    expect(operations.sort()).toEqual(allEndpoints.map(({ id }) => id).sort());
    expect(JSON.stringify(body)).not.toContain('$defs');
  });

  it('points every reference at a component that exists', async () => {
    const { body } = await supertest(test.server).get('/api/v1/openapi.json').expect(200);
    const references = [...JSON.stringify(body).matchAll(/"\$ref":"#\/components\/schemas\/(\w+)"/g)].map((match) => match[1] ?? '');
    expect(references.length).toBeGreaterThan(10);
    const schemas = Object.keys(body.components.schemas as object);
    expect(references.filter((name) => !schemas.includes(name))).toEqual([]);
  });

  it('shows a reference page that the policy lets through', async () => {
    const page = await supertest(test.server).get('/api/docs').expect(200).expect('Content-Type', /text\/html/);
    expect(page.text).not.toMatch(/<script|<style| style=| on[a-z]+=/);
    expect(page.text).toContain('identity.signIn');
    expect(page.headers['content-security-policy']).not.toContain('unsafe-inline');
    await supertest(test.server).get('/api/docs.css').expect(200).expect('Content-Type', /text\/css/);
  });

  it('answers an unknown address with a problem document', async () => {
    const { body } = await supertest(test.server).get('/api/v1/nowhere').set('Accept-Language', 'es').expect(404).expect('Content-Type', /application\/problem\+json/);
    expect(body).toMatchObject({ type: 'urn:yardfall:problem:notFound', code: 'notFound', status: 404, issues: [] });
    expect(body.requestId).toMatch(/^[0-9a-f-]{36}$/);
    const english = await supertest(test.server).get('/api/v1/nowhere').set('X-Request-Id', 'given-by-proxy').expect(404).expect('X-Request-Id', 'given-by-proxy');
    expect(english.body.detail).not.toBe(body.detail);
  });
});
