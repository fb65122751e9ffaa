import { randomUUID } from 'node:crypto';
import type { MemberRole } from '@yardfall/contracts';
import supertest from 'supertest';
import { memberActor } from '../../apps/api/src/common/actor.ts';
import { Database } from '../../apps/api/src/common/database.ts';
import { CompanyService } from '../../apps/api/src/company/company.service.ts';
import { hashPassword } from '../../apps/api/src/identity/password.ts';
import type { TestApp } from './app.ts';

export const password = 'a long enough password';
let storedPassword: Promise<string> | undefined;

export interface Person {
  readonly id: string;
  readonly companyId: string;
  readonly email: string;
  readonly roles: readonly MemberRole[];
  /** Signed in; keeps its cookie. */
  readonly agent: ReturnType<typeof supertest.agent>;
}

export interface TestCompany {
  readonly id: string;
  readonly owner: Person;
  readonly estimator: Person;
  readonly crew: Person;
}

/** A company with one person for each role, signed in. */
export async function makeCompany(test: TestApp, name = 'Trial Yards'): Promise<TestCompany> {
  const id = randomUUID();
  const ownerId = randomUUID();
  const actor = memberActor({ id: ownerId, companyId: id, roles: ['owner'] }, test.clock.now(), 'test');
  await test.app.get(Database).write(actor, (tx) =>
    test.app.get(CompanyService).create(tx, { id, name, state: 'NC', timeZone: 'America/New_York', responsibleName: 'Test Owner', phone: '919-555-0150' }));
  const owner = await makePerson(test, id, ['owner'], ownerId);
  const estimator = await makePerson(test, id, ['estimator']);
  const crew = await makePerson(test, id, ['crew']);
  return { id, owner, estimator, crew };
}

export async function makePerson(test: TestApp, companyId: string, roles: readonly MemberRole[], id: string = randomUUID()): Promise<Person> {
  storedPassword ??= hashPassword(password);
  const passwordHash = await storedPassword;
  const email = `${roles.join('-')}-${id}@example.test`;
  const actor = memberActor({ id, companyId, roles }, test.clock.now(), 'test');
  await test.app.get(Database).write(actor, (tx) =>
    tx.member.create({ data: { id, companyId, email, name: `Test ${roles.join(' ')}`, passwordHash, roles: [...roles], createdAt: test.clock.now() } }));
  return { id, companyId, email, roles, agent: await signIn(test, email) };
}

export async function signIn(test: TestApp, email: string): Promise<ReturnType<typeof supertest.agent>> {
  const agent = supertest.agent(test.server);
  await agent.post('/api/v1/session').send({ email, password }).expect(201);
  return agent;
}

/** A fresh Idempotency-Key for a write. */
export function key(): { 'Idempotency-Key': string } {
  return { 'Idempotency-Key': randomUUID() };
}
