import { randomUUID } from 'node:crypto';
import type { Role } from '@yardfall/contracts';
import supertest from 'supertest';
import { memberActor } from '../../apps/api/src/common/actor.ts';
import { Database } from '../../apps/api/src/common/database.ts';
import { key, makeCompany, type Person, type TestCompany } from './actors.ts';
import { startApp, type TestApp } from './app.ts';

/** Two companies; ours has a job with its customer, who came by the link. */
export interface World {
  readonly test: TestApp;
  readonly ours: TestCompany;
  readonly theirs: TestCompany;
  readonly jobId: string;
  readonly agents: Readonly<Record<Role, Person['agent']>>;
}

export async function buildWorld(): Promise<World> {
  const test = await startApp();
  const ours = await makeCompany(test, 'Our Yards');
  const theirs = await makeCompany(test, 'Their Yards');
  const jobId = await makeJob(test, ours);
  const customer = await visit(test, ours, jobId);
  return { test, ours, theirs, jobId, agents: { owner: ours.owner.agent, estimator: ours.estimator.agent, crew: ours.crew.agent, customer } };
}

/** The rows of a job that the frame itself needs: nothing is read from the sealed parts. */
async function makeJob(test: TestApp, company: TestCompany): Promise<string> {
  const [customerId, propertyId, id] = [randomUUID(), randomUUID(), randomUUID()];
  const companyId = company.id;
  const actor = memberActor({ id: company.owner.id, companyId, roles: ['owner'] }, test.clock.now(), 'test');
  await test.app.get(Database).write(actor, async (tx) => {
    await tx.customer.create({ data: { id: customerId, companyId, sealed: new Uint8Array([0]) } });
    await tx.property.create({ data: { id: propertyId, companyId, customerId, sealed: new Uint8Array([0]), state: 'NC', timeZone: 'America/New_York' } });
    await tx.job.create({ data: { id, companyId, customerId, propertyId, number: 1, title: 'Test job', stage: 'intake', urgency: 'normal', complaint: new Uint8Array([0]) } });
  });
  return id;
}

async function visit(test: TestApp, company: TestCompany, jobId: string): Promise<Person['agent']> {
  const { body } = await company.owner.agent.post(`/api/v1/jobs/${jobId}/customer-link`).set(key()).send({}).expect(201);
  const agent = supertest.agent(test.server);
  await agent.post('/api/v1/customer-session').send({ token: new URL(body.link as string).hash.slice(1) }).expect(201);
  return agent;
}
