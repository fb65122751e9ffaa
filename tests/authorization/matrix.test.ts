import supertest from 'supertest';
import { DiscoveryService, MetadataScanner } from '@nestjs/core';
import { allEndpoints, type Endpoint, may, type Role } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { registeredRoutes } from '../../apps/api/src/common/routes.check.ts';
import { password } from '../support/actors.ts';
import { namesRows, problemCode, send } from '../support/calls.ts';
import { fingerprint } from '../support/rows.ts';
import { apart, samples } from '../support/samples.ts';
import { World } from '../support/world.ts';

vi.setConfig({ testTimeout: 120_000 }); // some samples evaluate whole designs first

const roles: readonly Role[] = ['owner', 'estimator', 'crew', 'customer', 'sender'];
const guarded = allEndpoints.filter(({ access }) => !('public' in access));
const tried = guarded.filter(({ id }) => !apart.includes(id));

function allowed(endpoint: Endpoint, role: Role): boolean {
  const { access } = endpoint;
  return 'permission' in access ? may([role], access.permission) : role !== 'sender'; // a link that takes photos is no session
}

describe('who may do what', () => {
  let world: World;
  beforeAll(async () => {
    world = await World.build();
  }, 300_000);
  afterAll(() => world.test.close());

  const sampleOf = (endpoint: Endpoint, role: Role = 'crew') => {
    const sample = samples[endpoint.id];
    if (sample === undefined) throw new Error(`${endpoint.id} has no sample call in samples.ts`);
    return sample(world, role === 'customer' || role === 'sender' ? 'crew' : role);
  };

  it('every endpoint has a route, every route an endpoint, and every guarded one a sample call', () => {
    const routes = registeredRoutes(world.test.app.get(DiscoveryService), world.test.app.get(MetadataScanner));
    expect(routes.filter(({ endpoint }) => endpoint === undefined)).toEqual([]);
    expect(routes.map(({ endpoint }) => endpoint?.id ?? '').sort()).toEqual(allEndpoints.map(({ id }) => id).sort());
    expect(routes.filter(({ endpoint, method }) => endpoint?.method !== method)).toEqual([]);
    expect([...Object.keys(samples), ...apart].sort()).toEqual(guarded.map(({ id }) => id).sort());
  });

  it('whoever is public says why', () => {
    const reasons = allEndpoints.flatMap(({ access }) => ('public' in access ? [access.public] : []));
    expect(reasons.length).toBeGreaterThan(0);
    expect(reasons.filter((reason) => reason.length < 10)).toEqual([]);
  });

  it.each(guarded.map((endpoint) => [endpoint.id, endpoint] as const))('%s answers 401 without a session', async (_, endpoint) => {
    const call = apart.includes(endpoint.id) ? {} : await sampleOf(endpoint);
    const before = await fingerprint(world.test.owner);
    const answer = await send(supertest.agent(world.test.server), endpoint, call);
    expect([answer.status, answer.body.code]).toEqual([401, 'auth.required']);
    const forged = await send(supertest.agent(world.test.server).set('Cookie', `yardfall_session=${'A'.repeat(43)}`), endpoint, call);
    expect([forged.status, forged.body.code]).toEqual([401, 'auth.required']);
    expect(await fingerprint(world.test.owner)).toBe(before);
  });

  describe.each(tried.map((endpoint) => [endpoint.id, endpoint] as const))('%s', (_, endpoint) => {
    it.each(roles.filter((role) => allowed(endpoint, role)))(`lets the %s in with ${endpoint.status}`, async (role) => {
      const call = await sampleOf(endpoint, role);
      const answer = await send((role === 'customer' ? call.customer : undefined) ?? world.agents[role], endpoint, call);
      expect([answer.status, problemCode(answer), problemCode(answer) === undefined ? '' : answer.text]).toEqual([endpoint.status, undefined, '']);
    });

    const denied = roles.filter((role) => !allowed(endpoint, role));
    if (denied.length === 0) return;
    it.each(denied)('refuses the %s and changes nothing', async (role) => {
      const call = await sampleOf(endpoint);
      const before = await fingerprint(world.test.owner);
      const answer = await send(world.agents[role], endpoint, call);
      expect([answer.status, answer.body.code]).toEqual('permission' in endpoint.access ? [403, 'auth.forbidden'] : [401, 'auth.required']);
      expect(await fingerprint(world.test.owner)).toBe(before);
    });
  });

  const withIds = tried.filter(namesRows);
  it.each(withIds.map((endpoint) => [endpoint.id, endpoint] as const))('%s answers 404 to another company and changes nothing', async (_, endpoint) => {
    const call = await sampleOf(endpoint);
    const before = await fingerprint(world.test.owner);
    const role = (['owner', 'estimator', 'crew'] as const).find((candidate) => allowed(endpoint, candidate));
    if (role === undefined) return; // a customer's endpoint: no member of another company may call it at all
    const answer = await send(world.theirs[role].agent, endpoint, call);
    expect([answer.status, answer.body.code]).toEqual([404, 'notFound']);
    expect(await fingerprint(world.test.owner)).toBe(before);
  });

  it('signing out ends the session for good', async () => {
    const agent = supertest.agent(world.test.server);
    const { headers } = await agent.post('/api/v1/session').send({ email: world.ours.crew.email, password }).expect(201);
    const cookie = String(headers['set-cookie']).split(';')[0] ?? '';
    await supertest(world.test.server).get('/api/v1/session').set('Cookie', cookie).expect(200);
    await agent.delete('/api/v1/session').expect(204);
    const { body } = await supertest(world.test.server).get('/api/v1/session').set('Cookie', cookie).expect(401);
    expect(body.code).toBe('auth.required');
  });
});
