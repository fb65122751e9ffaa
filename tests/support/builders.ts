import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { type DesignDocument, quantityCodes } from '@yardfall/calc';
import { type Job, type NewJob, type Offer, permitKinds, type Permits, type PriceSheet, type Revision } from '@yardfall/contracts';
import supertest from 'supertest';
import { memberActor } from '../../apps/api/src/common/actor.ts';
import { Database } from '../../apps/api/src/common/database.ts';
import { inRoot } from '../../tools/paths.mjs';
import { key, type TestCompany } from './actors.ts';
import type { TestApp } from './app.ts';

export type Agent = ReturnType<typeof supertest.agent>;

/** One of the invented sites, as its design document. */
export function siteDocument(name: 'tern-hollow' | 'ridgeback' | 'sallow-bend'): DesignDocument {
  return JSON.parse(readFileSync(path.join(inRoot('prisma', 'seed', 'sites'), `${name}.json`), 'utf8')) as DesignDocument;
}

export const call: NewJob = {
  title: 'Water at the patio door',
  customer: { name: 'Marisol Pruett', email: 'marisol@example.test', phones: ['555-0142'], language: 'en' },
  property: { address: '118 Tern Hollow Ln', state: 'NC', timeZone: 'America/New_York', gateCode: '#4711*', notes: 'dog in the yard' },
  complaint: {
    words: 'It comes in under the slider', depth: 0.05, startsAfter: 900, staysFor: 14_400, door: 'Patio slider', enteredHouse: true, onDryDays: false, timesPerYear: 3, tried: '', rainDate: null,
  },
};

export async function post<T>(agent: Agent, url: string, body: object, status: number): Promise<T> {
  const response = await agent.post(`/api/v1${url}`).set(key()).send(body);
  if (response.status !== status) throw new Error(`POST ${url} answered ${String(response.status)}: ${response.text}`);
  return response.body as T;
}

export async function get<T>(agent: Agent, url: string): Promise<T> {
  const response = await agent.get(`/api/v1${url}`);
  if (response.status !== 200) throw new Error(`GET ${url} answered ${String(response.status)}: ${response.text}`);
  return response.body as T;
}

export function newJob(company: TestCompany, changes: Partial<NewJob> = {}): Promise<Job> {
  return post<Job>(company.estimator.agent, '/jobs', { ...call, ...changes }, 201);
}

export interface WithRevision {
  readonly job: Job;
  readonly revision: Revision;
}

/** A job with a design that nobody has issued yet. */
export async function draftRevision(company: TestCompany, document: DesignDocument = siteDocument('tern-hollow')): Promise<WithRevision> {
  const job = await newJob(company);
  const revision = await post<Revision>(company.estimator.agent, `/jobs/${job.id}/designs`, { name: 'First', document, fromRevisionId: null }, 201);
  return { job, revision };
}

/** Accepts every caution by name. */
export async function acknowledgeAll(agent: Agent, revision: Revision): Promise<Revision> {
  let latest = revision;
  for (const { code, at, severity } of revision.evaluation?.findings ?? []) {
    if (severity === 'caution') latest = await post<Revision>(agent, `/jobs/${revision.jobId}/revisions/${revision.id}/acknowledgements`, { code, at, note: 'seen' }, 200);
  }
  return latest;
}

export async function issue(agent: Agent, revision: Revision): Promise<Revision> {
  const url = `/api/v1/jobs/${revision.jobId}/revisions/${revision.id}/issue`;
  const response = await agent.post(url).set(key()).set('If-Match', `"${String(revision.version)}"`).send({});
  if (response.status !== 200) throw new Error(`${url} answered ${String(response.status)}: ${response.text}`);
  return response.body as Revision;
}

export async function issuedRevision(company: TestCompany, document?: DesignDocument): Promise<WithRevision> {
  const { job, revision } = await draftRevision(company, document);
  return { job, revision: await issue(company.estimator.agent, await acknowledgeAll(company.estimator.agent, revision)) };
}

const tradeUnits = { m: 'ft', m2: 'ft2', m3: 'yd3', each: 'each', kg: 'ton', bag80: 'bag', cutMetreInch: 'inchFoot' } as const;

/** A price list with a price for every code that a take-off can give: a dollar for each of its own unit, and six minutes of labor. */
export async function priceEverything(test: TestApp, company: TestCompany): Promise<void> {
  const actor = memberActor({ id: company.owner.id, companyId: company.id, roles: ['owner'] }, test.clock.now(), 'test');
  const data = Object.entries(quantityCodes).map(([code, unit]) => ({
    id: randomUUID(), companyId: company.id, code, name: code, kind: 'material', unit: tradeUnits[unit], unitCost: 10_000n, hoursPerUnit: 0.1, taxable: true,
  }));
  await test.app.get(Database).write(actor, (tx) => tx.priceItem.createMany({ data, skipDuplicates: true }));
}

export interface WithSheet extends WithRevision {
  readonly sheet: PriceSheet;
}

export async function pricedRevision(test: TestApp, company: TestCompany, document?: DesignDocument): Promise<WithSheet> {
  const { job, revision } = await issuedRevision(company, document);
  await priceEverything(test, company);
  const sheet = await post<PriceSheet>(company.estimator.agent, `/jobs/${job.id}/price-sheets`, { revisionId: revision.id }, 201);
  return { job, revision, sheet };
}

export interface WithOffer extends WithSheet {
  readonly offer: Offer;
  /** The link that was handed to the customer, and the customer signed in by it. */
  readonly link: string;
  readonly customer: Agent;
}

export async function openLink(test: TestApp, link: string): Promise<Agent> {
  const agent = supertest.agent(test.server);
  await agent.post('/api/v1/customer-session').send({ token: link.split('#')[1] }).expect(201);
  return agent;
}

export async function sentOffer(test: TestApp, company: TestCompany, validUntil = '2026-04-01', document?: DesignDocument): Promise<WithOffer> {
  const priced = await pricedRevision(test, company, document);
  const { agent } = company.estimator;
  const draft = await post<Offer>(agent, `/jobs/${priced.job.id}/offers`, { sheetId: priced.sheet.id, validUntil, message: '' }, 201);
  const { offer, link } = await post<{ offer: Offer; link: string }>(agent, `/jobs/${priced.job.id}/offers/${draft.id}/send`, {}, 200);
  return { ...priced, offer, link, customer: await openLink(test, link) };
}

export async function acceptedOffer(test: TestApp, company: TestCompany, document?: DesignDocument): Promise<WithOffer> {
  const sent = await sentOffer(test, company, undefined, document);
  await post(sent.customer, `/portal/offers/${sent.offer.id}/accept`, { name: 'Marisol Pruett', sha256: sent.offer.sha256, electronicRecords: true }, 200);
  return sent;
}

/** The offices were asked, and none of the approvals is needed. */
export function noPermitNeeded(agent: Agent, jobId: string): Promise<Permits> {
  const rest = { state: 'notNeeded', number: '', note: 'told at the counter', on: '2026-03-02', expiresOn: null, photoId: null };
  return post<Permits>(agent, `/jobs/${jobId}/permits`, { answers: permitKinds.map((kind) => ({ kind, ...rest })) }, 200);
}

/** Accepted, released to dig, with the crew on it. */
export async function releasedJob(test: TestApp, company: TestCompany, document?: DesignDocument): Promise<WithOffer> {
  const accepted = await acceptedOffer(test, company, document);
  await noPermitNeeded(company.estimator.agent, accepted.job.id);
  const job = await post<Job>(company.owner.agent, `/jobs/${accepted.job.id}/release`, { offerId: accepted.offer.id }, 200);
  const assignments = [{ memberId: company.crew.id, role: 'crew' }, { memberId: company.estimator.id, role: 'estimator' }];
  await company.owner.agent.put(`/api/v1/jobs/${job.id}/assignments`).set(key()).send({ assignments }).expect(200);
  return { ...accepted, job };
}
