import { randomUUID } from 'node:crypto';
import { allEndpoints, type Endpoint, may, type Role } from '@yardfall/contracts';
import supertest from 'supertest';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { addressOf, namesRows, send } from '../support/calls.ts';
import { fingerprint } from '../support/rows.ts';
import { apart, type SampleCall, samples } from '../support/samples.ts';
import { World } from '../support/world.ts';

vi.setConfig({ testTimeout: 120_000 }); // some samples evaluate whole designs first

const roles: readonly Role[] = ['owner', 'estimator', 'crew', 'customer', 'sender'];
const guarded = allEndpoints.filter(({ id, access }) => !('public' in access) && !apart.includes(id));
const named = (list: readonly Endpoint[]) => list.map((endpoint) => [endpoint.id, endpoint] as const);
const withJson = guarded.filter(({ body, upload, tus }) => body !== null && upload === undefined && tus === undefined);

/** Every string in a body, one at a time, with a character that cannot be stored. */
function poisoned(value: unknown, poison: string): unknown[] {
  if (typeof value === 'string') return [`${value.slice(0, 20)}${poison}`];
  if (Array.isArray(value)) return value.flatMap((entry, index) => poisoned(entry, poison).map((bad) => value.map((own, at) => (at === index ? bad : own))));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, entry]) => poisoned(entry, poison).map((bad) => ({ ...value, [name]: bad })));
}

describe('bad input', () => {
  let world: World;
  beforeAll(async () => {
    world = await World.build();
  }, 300_000);
  afterAll(() => world.test.close());

  const agentFor = ({ access }: Endpoint) => {
    const role = roles.find((candidate) => !('permission' in access) || may([candidate], access.permission));
    if (role === undefined) throw new Error('nobody may call it');
    return world.agents[role];
  };
  const sampleOf = async (endpoint: Endpoint): Promise<SampleCall> => {
    const sample = samples[endpoint.id];
    if (sample === undefined) throw new Error(`${endpoint.id} has no sample call in samples.ts`);
    return sample(world, 'owner');
  };
  const raw = async (endpoint: Endpoint, call: SampleCall, type: string, body: string) => {
    const method = endpoint.method.toLowerCase() as 'post' | 'put' | 'patch' | 'delete';
    const request = agentFor(endpoint)[method](addressOf(endpoint, call)).set('Content-Type', type).set('Idempotency-Key', randomUUID());
    const before = await fingerprint(world.test.owner);
    const answer = await (call.ifMatch === undefined ? request : request.set('If-Match', call.ifMatch)).send(body);
    expect(await fingerprint(world.test.owner)).toBe(before);
    expect(answer.headers['content-type']).toBe('application/problem+json; charset=utf-8');
    return [answer.status, answer.body.code] as const;
  };

  it.each(named(guarded))('%s refuses an unknown query key', async (_, endpoint) => {
    const call = await sampleOf(endpoint);
    const answer = await send(agentFor(endpoint), endpoint, { ...call, query: { ...call.query, unheardOf: '1' } });
    expect([answer.status, answer.body.code]).toEqual([400, 'request.invalid']);
    expect(answer.body.issues[0].path).toBe('query');
  });

  it.each(named(guarded.filter(namesRows)))('%s refuses an id that is none', async (_, endpoint) => {
    const call = await sampleOf(endpoint);
    const params = Object.fromEntries(Object.entries(call.params ?? {}).map(([name, value]) => [name, name.endsWith('Id') ? 'not-an-id' : value]));
    const answer = await send(agentFor(endpoint), endpoint, { ...call, params });
    expect([answer.status, answer.body.code]).toEqual([400, 'request.invalid']);
  });

  it.each(named(withJson))('%s refuses what is not its JSON and changes nothing', async (_, endpoint) => {
    const call = await sampleOf(endpoint);
    expect(await raw(endpoint, call, 'application/json', JSON.stringify({ ...call.body, unheardOf: 1 }))).toEqual([400, 'request.invalid']);
    expect(await raw(endpoint, call, 'application/json', '[]')).toEqual([400, 'request.invalid']);
    expect(await raw(endpoint, call, 'application/json', 'null')).toEqual([400, 'request.unreadable']);
    expect(await raw(endpoint, call, 'application/json', '{"half":')).toEqual([400, 'request.unreadable']);
    expect(await raw(endpoint, call, 'text/plain', 'hello')).toEqual([415, 'request.unsupportedType']);
    expect(await raw(endpoint, call, 'application/json', `{"x":"${'y'.repeat(endpoint.maxBody ?? 1_048_576)}"}`)).toEqual([413, 'request.tooLarge']);
  });

  it.each(named(withJson))('%s refuses text that cannot be stored', async (_, endpoint) => {
    const call = await sampleOf(endpoint);
    const before = await fingerprint(world.test.owner);
    for (const poison of ['\u0000', '\ud800']) {
      for (const body of poisoned(call.body, poison).slice(0, 40)) {
        const answer = await send(agentFor(endpoint), endpoint, { ...call, body: body as object });
        expect([answer.status, answer.body.code], JSON.stringify(body).slice(0, 200)).toEqual([400, 'request.invalid']);
      }
    }
    expect(await fingerprint(world.test.owner)).toBe(before);
  });

  it.each(named(guarded.filter(({ concurrency }) => concurrency === 'ifMatch')))('%s wants the newest version', async (_, endpoint) => {
    const { ifMatch: _newest, ...call } = await sampleOf(endpoint);
    const before = await fingerprint(world.test.owner);
    const codes: unknown[] = [];
    for (const given of [{}, { ifMatch: '"999999"' }, { ifMatch: 'W/"nonsense"' }]) {
      const answer = await send(agentFor(endpoint), endpoint, { ...call, ...given });
      codes.push([answer.status, answer.body.code]);
    }
    expect(codes).toEqual([[428, 'conflict.preconditionRequired'], [412, 'conflict.stale'], [412, 'conflict.stale']]);
    expect(await fingerprint(world.test.owner)).toBe(before);
  });

  it.each(named(allEndpoints.filter(({ access, body }) => 'public' in access && body !== null)))('%s, which is public, refuses it as well', async (_, endpoint) => {
    const before = await fingerprint(world.test.owner);
    const trial = (type: string, body: string) => supertest(world.test.server).post(endpoint.fullPath).set('Content-Type', type).send(body);
    const codes: unknown[] = [];
    for (const [type, body] of [['application/json', '{"unheardOf":1}'], ['application/json', '{"half":'], ['text/plain', 'x'], ['application/json', `"${'x'.repeat(1_048_577)}"`]] as const) {
      const answer = await trial(type, body);
      codes.push([answer.status, answer.body.code]);
    }
    expect(codes).toEqual([[400, 'request.invalid'], [400, 'request.unreadable'], [415, 'request.unsupportedType'], [413, 'request.tooLarge']]);
    expect(await fingerprint(world.test.owner)).toBe(before);
  });

  it('names every bad field at once, in the language of the reader', async () => {
    const send = (language: string) => world.ours.owner.agent.post('/api/v1/members').set('Idempotency-Key', randomUUID()).set('Accept-Language', language).send({ name: '', email: 'x', roles: [] });
    const { body } = await send('en').expect(400);
    expect(body.issues.map(({ path }: { path: string }) => path)).toEqual(['body.name', 'body.email', 'body.roles']);
  });

  it('keeps a broken address and a strange method inside the problem document', async () => {
    const agent = world.ours.owner.agent;
    expect((await agent.get('/api/v1/jobs/%E0%A4%A/x')).body.code).toMatch(/^(request\.unreadable|notFound)$/);
    expect((await agent.put('/api/v1/session').send({})).body.code).toBe('notFound');
  });
});
