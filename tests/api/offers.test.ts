import { createHash, randomUUID } from 'node:crypto';
import type { Job, Offer, Portal } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { call, get, newJob, noPermitNeeded, openLink, post, pricedRevision, sentOffer, type WithSheet } from '../support/builders.ts';

let test: TestApp;
let ours: TestCompany;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
});
afterAll(() => test.close());

const accept = (agent: TestCompany['owner']['agent'], offer: Offer, body: object = {}) =>
  agent.post(`/api/v1/portal/offers/${offer.id}/accept`).set(key()).send({ name: 'Marisol Pruett', sha256: offer.sha256, electronicRecords: true, ...body });

describe('making an offer', () => {
  let priced: WithSheet;
  beforeAll(async () => {
    priced = await pricedRevision(test, ours);
  });
  const make = (body: object) => ours.estimator.agent.post(`/api/v1/jobs/${priced.job.id}/offers`).set(key()).send({ sheetId: priced.sheet.id, validUntil: '2026-04-01', message: '', ...body });

  it('freezes the price sheet, and nobody but the office sees the draft', async () => {
    const offer = (await make({ message: 'As promised.' }).expect(201)).body as Offer;
    expect(offer).toMatchObject({ number: 1, status: 'draft', price: priced.sheet.totals.price, sentAt: null, language: 'en' });
    const frozen = await ours.estimator.agent.put(`/api/v1/jobs/${priced.job.id}/price-sheets/${priced.sheet.id}`).set(key()).set('If-Match', `"${String(priced.sheet.version)}"`)
      .send({ marginBasisPoints: 1, taxBasisPoints: 0, contingencyBasisPoints: 0, labourRate: 1, lines: [] }).expect(409);
    expect(frozen.body.code).toBe('conflict.state');
    await expect(test.owner.query('DELETE FROM price_line WHERE sheet_id = $1', [priced.sheet.id])).rejects.toMatchObject({ code: 'YF001' });
    await ours.crew.agent.get(`/api/v1/jobs/${priced.job.id}/offers`).expect(403);
  });

  it('counts the last day where the property stands, and refuses one that is over', async () => {
    test.clock.set('2026-03-03T04:00:00Z'); // still 2 March in New York
    await make({ validUntil: '2026-03-02' }).expect(201);
    const over = await make({ validUntil: '2026-03-01' }).expect(400);
    expect(over.body.issues).toMatchObject([{ path: 'body.validUntil' }]);
    test.clock.set('2026-03-02T15:00:00Z');
  });

  it('keeps the name of the customer out of the stored bytes', async () => {
    const { rows } = await test.owner.query<{ content: Buffer; texts: Buffer }>('SELECT content, texts FROM offer');
    for (const { content, texts } of rows) expect(Buffer.concat([content, texts]).includes('Marisol')).toBe(false);
  });
});

describe('the customer page', () => {
  it('shows the why, the drawing and the exact text, and not a word of cost', async () => {
    const { customer, offer, job } = await sentOffer(test, ours);
    const page = await get<Portal>(customer, '/portal');
    expect(page).toMatchObject({ jobTitle: job.title, customerName: call.customer.name, stage: 'offered', company: { name: 'Trial Yards', responsibleName: 'Test Owner', phone: '919-555-0150' }, next: { code: 'portal.next.offered' }, proof: null, handover: null });
    expect(page.offer).toMatchObject({ id: offer.id, status: 'sent', price: offer.price, sha256: offer.sha256 });
    expect(page.drawing?.family).toHaveLength(16);
    expect(page.why.map(({ code }) => code)).toContain('portal.why.freeboard');
    expect(JSON.stringify(page)).not.toMatch(/margin|markup|unitCost|labourRate|contingency/i);
    const bytes = await customer.get(`/api/v1/portal/offers/${offer.id}/text`).expect(200);
    expect(bytes.headers['content-type']).toMatch(/^text\/plain/);
    expect(createHash('sha256').update(bytes.text, 'utf8').digest('hex')).toBe(offer.sha256);
    expect(bytes.text).toContain(call.customer.name);
  });

  it('lets the customer see their own job only, and nothing of the office', async () => {
    const { customer, job } = await sentOffer(test, ours);
    const other = await sentOffer(test, ours);
    await customer.get(`/api/v1/portal/offers/${other.offer.id}/text`).expect(404);
    await accept(customer, other.offer).expect(404);
    for (const path of ['/jobs', `/jobs/${job.id}`, `/jobs/${job.id}/offers`, `/jobs/${job.id}/price-sheets`, '/price-items', '/members']) {
      await customer.get(`/api/v1${path}`).expect(403);
    }
    await ours.owner.agent.get('/api/v1/portal').expect(403);
    expect((await get<Portal>(other.customer, '/portal')).offer?.status).toBe('sent');
  });

  it('a link that was minted anew ends the old one', async () => {
    const { job, offer, link } = await sentOffer(test, ours);
    const again = await post<{ link: string }>(ours.estimator.agent, `/jobs/${job.id}/offers/${offer.id}/send`, {}, 200);
    expect(again.link).not.toBe(link);
    await expect(openLink(test, link)).rejects.toThrow();
    await openLink(test, again.link);
  });
});

describe('acceptance', () => {
  it('takes the typed name against the hash of what was read, once', async () => {
    const { customer, offer, job } = await sentOffer(test, ours);
    const wrong = await accept(customer, offer, { sha256: 'f'.repeat(64) }).expect(409);
    expect(wrong.body.code).toBe('offer.hashMismatch');
    await accept(customer, offer, { electronicRecords: false }).expect(400);
    const page = (await accept(customer, offer).expect(200)).body as Portal;
    expect(page).toMatchObject({ stage: 'accepted', offer: { status: 'accepted', acceptedName: 'Marisol Pruett', acceptedSha256: offer.sha256 } });
    const again = await accept(customer, offer).expect(409);
    expect(again.body.code).toBe('offer.notOpen');
    const seen = await get<Job>(ours.owner.agent, `/jobs/${job.id}`);
    expect(seen.holds.map(({ code, waitsFor }) => [code, waitsFor])).toEqual([['jobs.hold.release', 'us'], ['jobs.hold.permits', 'permit']]);
    const { rows } = await test.owner.query<{ accepted_name: string }>('SELECT accepted_name FROM offer WHERE id = $1', [offer.id]);
    expect(rows[0]?.accepted_name).not.toContain('Marisol');
    await expect(test.owner.query(`UPDATE offer SET price = 1 WHERE id = $1`, [offer.id])).rejects.toMatchObject({ code: 'YF001' });
    await ours.estimator.agent.post(`/api/v1/jobs/${job.id}/offers/${offer.id}/withdraw`).set(key()).send({}).expect(409);
  });

  it('is over when the last day is over, or when the offer was taken back', async () => {
    const first = await sentOffer(test, ours);
    await post(ours.estimator.agent, `/jobs/${first.job.id}/offers/${first.offer.id}/withdraw`, {}, 200);
    expect((await accept(first.customer, first.offer).expect(409)).body).toMatchObject({ code: 'offer.notOpen', params: { status: 'withdrawn' } });
    const second = await sentOffer(test, ours);
    test.clock.set('2026-04-02T05:00:00Z');
    expect((await accept(second.customer, second.offer).expect(409)).body).toMatchObject({ code: 'offer.notOpen', params: { status: 'expired' } });
    expect((await get<Portal>(second.customer, '/portal')).offer?.status).toBe('expired');
    test.clock.set('2026-03-02T15:00:00Z');
  });
});

describe('the release', () => {
  it('is held with every reason until the offer is accepted', async () => {
    const { job, offer } = await sentOffer(test, ours);
    await noPermitNeeded(ours.estimator.agent, job.id);
    const held = await ours.owner.agent.post(`/api/v1/jobs/${job.id}/release`).set(key()).send({ offerId: offer.id }).expect(409);
    expect(held.body).toMatchObject({ code: 'release.held', params: { reasons: 'jobs.held.offerNotAccepted' }, issues: [{ path: 'jobs.held.offerNotAccepted', message: 'The offer is not accepted.' }] });
    expect(await get<Job>(ours.owner.agent, `/jobs/${job.id}`)).toMatchObject({ stage: 'offered', buildRevisionId: null });
  });

  it('belongs to the job of the offer', async () => {
    const { offer } = await sentOffer(test, ours);
    const other = await newJob(ours);
    await ours.owner.agent.post(`/api/v1/jobs/${other.id}/release`).set(key()).send({ offerId: offer.id }).expect(404);
    await ours.owner.agent.post(`/api/v1/jobs/${randomUUID()}/release`).set(key()).send({ offerId: offer.id }).expect(404);
    expect((await get<Job>(ours.owner.agent, `/jobs/${other.id}`)).buildRevisionId).toBeNull();
  });
});
