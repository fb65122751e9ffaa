import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import type { Call } from './calls.ts';
import { key, makePerson } from './actors.ts';
import type { World } from './world.ts';

/** A valid call, made anew for each actor, so that whoever is allowed gets exactly the status of the contract. */
export type Sample = (world: World) => Call | Promise<Call>;

const site: unknown = JSON.parse(readFileSync(new URL('../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8'));

const nothing: Sample = () => ({});

async function companyVersion({ ours }: World): Promise<string> {
  const { headers } = await ours.owner.agent.get('/api/v1/company').expect(200);
  return headers['etag'] as string;
}

async function newDevice({ ours }: World): Promise<string> {
  const id = randomUUID();
  await ours.crew.agent.post('/api/v1/devices').set(key()).send({ id, name: 'Phone' }).expect(201);
  return id;
}

/** By endpoint id. An endpoint without a row fails the test. Public endpoints need none: nobody is refused there. */
export const samples: Readonly<Record<string, Sample>> = {
  'identity.me': nothing,
  'identity.updatePreferences': () => ({ body: { theme: 'dark' } }),
  'identity.members': nothing,
  'identity.invite': () => ({ body: { name: 'New Person', email: `${randomUUID()}@example.test`, roles: ['crew'] } }),
  'identity.updateMember': async ({ test, ours }) => ({ params: { memberId: (await makePerson(test, ours.id, ['crew'])).id }, body: { roles: ['estimator'] } }),
  'identity.customerLink': ({ jobId }) => ({ params: { jobId }, body: {} }),
  'identity.registerDevice': () => ({ body: { id: randomUUID(), name: 'Phone' } }),
  'identity.cutOffDevice': async (world) => ({ params: { deviceId: await newDevice(world) }, body: {} }),
  'company.read': nothing,
  'company.update': async (world) => ({ ifMatch: await companyVersion(world), body: { responsibleName: 'Somebody Else' } }),
  'audit.list': ({ jobId }) => ({ query: { jobId } }),
  'audit.verify': nothing,
  'notices.stream': nothing,
  'evaluate.run': () => ({ body: { document: site } }),
};

/** Ends the session that it is called with, so it is tried apart from the matrix. */
export const apart: readonly string[] = ['identity.signOut'];
