import supertest from 'supertest';
import type { TestCompany } from './actors.ts';
import type { TestApp } from './app.ts';
import { post, type Agent } from './builders.ts';

/** The token of a fresh link by which a customer sends photos. */
export async function sendingToken(company: TestCompany, jobId: string): Promise<string> {
  const { link } = await post<{ link: string }>(company.estimator.agent, `/jobs/${jobId}/sending-link`, {}, 201);
  return link.split('#')[1] ?? '';
}

/** A phone without an account that has opened the link. */
export async function openSending(test: TestApp, company: TestCompany, jobId: string): Promise<Agent> {
  const agent = supertest.agent(test.server);
  await agent.post('/api/v1/sending').send({ token: await sendingToken(company, jobId) }).expect(201);
  return agent;
}
