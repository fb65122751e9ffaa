import { expect, type Browser } from '@playwright/test';
import type { DesignDocument } from '@yardfall/calc';
import { type Job, type LocateTicket, type Me, type Offer, permitKinds, type PriceSheet, type Revision } from '@yardfall/contracts';
import { signInOf } from '../../support/demo.ts';
import { ternHollow } from './bigYard.ts';
import { jobFor } from './office.ts';
import { api, openBrowser, phone, type MemberKind, type Person } from './people.ts';

/** Signed in without the form, for what another test does by hand. */
export async function member(browser: Browser, kind: MemberKind): Promise<Person> {
  const person = await openBrowser(browser, phone);
  const { email, password } = signInOf(process.env.E2E_DATA_DIR ?? '', kind);
  const { status } = await api(person, 'POST', '/session', { email, password });
  expect(status).toBe(201);
  return person;
}

export interface Sold {
  readonly jobId: string;
  readonly offerId: string;
  readonly revisionId: string;
  /** The customer's. */
  readonly link: string;
}

/** A job whose offer the customer accepted; nothing is said of its permits. */
export async function soldJob(browser: Browser, title: string, document: DesignDocument = ternHollow()): Promise<Sold> {
  const estimator = await member(browser, 'estimator');
  const jobId = await jobFor(estimator, title);
  const offer = await offered(estimator, jobId, await issued(estimator, jobId, document));
  const customer = await openBrowser(browser, phone);
  await done(customer, 'POST', '/customer-session', { token: offer.link.split('#')[1] });
  await done(customer, 'POST', `/portal/offers/${offer.id}/accept`, { name: 'Ilse Varga', sha256: offer.sha256, electronicRecords: true });
  for (const { context } of [estimator, customer]) await context.close();
  return { jobId, offerId: offer.id, revisionId: offer.revisionId, link: offer.link };
}

export const notNeeded = { state: 'notNeeded', number: '', note: 'Told at the town counter.', on: '2026-11-01', expiresOn: null, photoId: null };

/** A job that the crew may dig today: designed, sold, released and marked, all by the API. */
export async function readyJob(browser: Browser, title: string, document: DesignDocument = ternHollow()): Promise<string> {
  const owner = await member(browser, 'owner');
  const { jobId, offerId } = await soldJob(browser, title, document);
  await done(owner, 'POST', `/jobs/${jobId}/permits`, { answers: permitKinds.map((kind) => ({ kind, ...notNeeded })) });
  await done<Job>(owner, 'POST', `/jobs/${jobId}/release`, { offerId });
  const crew = await member(browser, 'crew');
  const { id: memberId } = await done<Me>(crew, 'GET', '/session');
  await done(owner, 'PUT', `/jobs/${jobId}/assignments`, { assignments: [{ memberId, role: 'crew' }] });
  await marked(owner, jobId);
  for (const { context } of [owner, crew]) await context.close();
  return jobId;
}

async function issued(estimator: Person, jobId: string, document: DesignDocument): Promise<Revision> {
  let revision = await done<Revision>(estimator, 'POST', `/jobs/${jobId}/designs`, { name: 'Yard', document, fromRevisionId: null });
  const path = `/jobs/${jobId}/revisions/${revision.id}`;
  const cautions = (revision.evaluation?.findings ?? []).filter(({ severity }) => severity === 'caution');
  for (const { code, at } of cautions) revision = await done<Revision>(estimator, 'POST', `${path}/acknowledgements`, { code, at, note: 'Looked at in the yard.' });
  return done<Revision>(estimator, 'POST', `${path}/issue`, {}, revision.version);
}

async function offered(estimator: Person, jobId: string, { id: revisionId }: Revision): Promise<Offer & { readonly link: string }> {
  const sheet = await done<PriceSheet>(estimator, 'POST', `/jobs/${jobId}/price-sheets`, { revisionId });
  const { marginBasisPoints, taxBasisPoints, contingencyBasisPoints, labourRate } = sheet;
  const known = sheet.lines.map(({ id: _id, position: _position, cost: _cost, ...line }) => line);
  const lump = { kind: 'material', unit: 'lump', quantity: 1, unitCost: 1_200_000, taxable: true, origin: 'override', reason: 'Lump sum from the supplier.' };
  const lines = [...known, ...sheet.missing.map((code) => ({ code, name: code, ...lump }))];
  await done(estimator, 'PUT', `/jobs/${jobId}/price-sheets/${sheet.id}`, { marginBasisPoints, taxBasisPoints, contingencyBasisPoints, labourRate, lines }, sheet.version);
  const validUntil = new Date(Date.now() + 30 * 86_400_000).toISOString().slice(0, 10);
  const draft = await done<Offer>(estimator, 'POST', `/jobs/${jobId}/offers`, { sheetId: sheet.id, validUntil, message: '' });
  const { offer, link } = await done<{ offer: Offer; link: string }>(estimator, 'POST', `/jobs/${jobId}/offers/${draft.id}/send`, {});
  return { ...offer, link };
}

/** A ticket of last week that every utility has answered. */
async function marked(owner: Person, jobId: string): Promise<void> {
  const requestedAt = new Date(Date.now() - 7 * 86_400_000).toISOString();
  const ticket = await done<LocateTicket>(owner, 'POST', `/jobs/${jobId}/locate-tickets`, { number: `VA-${String(Date.now())}`, requestedAt, area: 'Back yard from the patio to the street', utilities: ['Power', 'Gas'] });
  for (const [utility, answer] of [['Power', 'marked'], ['Gas', 'clear']]) await done(owner, 'POST', `/jobs/${jobId}/locate-tickets/${ticket.id}/responses`, { utility, answer, note: '' });
  await done(owner, 'POST', `/jobs/${jobId}/locate-tickets/${ticket.id}/events`, { kind: 'marksAgree', utility: '', hazard: false, note: '', photoId: null, at: new Date().toISOString() });
}

/** The answer of a call that has to succeed. */
export async function done<T>(person: Person, method: 'GET' | 'POST' | 'PUT', path: string, body?: unknown, version?: number): Promise<T> {
  const answer = await api<T>(person, method, path, body, version === undefined ? {} : { 'if-match': `"${String(version)}"` });
  expect(answer.status, `${method} ${path}: ${JSON.stringify(answer.body)}`).toBeLessThan(300);
  return answer.body;
}
