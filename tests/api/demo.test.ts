import type { Checklist, Handover, Job, JobRow, Offer, Portal, PriceSheet, ProofTest } from '@yardfall/contracts';
import supertest from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { systemActor } from '../../apps/api/src/common/actor.ts';
import { loadDemo, type SignIn, withAddress } from '../../apps/api/src/seed/demo.ts';
import { CopiesService } from '../../apps/api/src/photos/copies.service.ts';
import type { Person } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, openLink } from '../support/builders.ts';

let test: TestApp;
let signIns: SignIn[];
let owner: Person['agent'];
let jobs: Map<string, JobRow>;

beforeAll(async () => {
  test = await startApp('2026-11-25T15:00:00Z');
  signIns = withAddress((await loadDemo(test.app)) ?? [], 'http://demo.test');
  const one = signIns.find(({ role }) => role === 'owner');
  owner = supertest.agent(test.server);
  await owner.post('/api/v1/session').send({ email: one?.email, password: one?.password }).expect(201);
  const { items } = await get<{ items: JobRow[] }>(owner, '/jobs');
  jobs = new Map(items.map((job) => [job.address.split(',')[0] ?? '', job]));
}, 180_000);
afterAll(() => test.close());

describe('the demo company', () => {
  it('has four sites where they stand', () => {
    expect([...jobs].map(([address, { stage }]) => [address, stage])).toEqual([['40 Wicker Rd', 'released'], ['9 Ridgeback Ct', 'design'], ['77 Sallow Bend', 'referred'], ['118 Tern Hollow Ln', 'handedOver']]);
    // The sketch on a home is of what the job has.
    expect([...jobs].map(([address, { system }]) => [address, system])).toEqual([
      ['40 Wicker Rd', ['roof', 'pipe', 'swale']], ['9 Ridgeback Ct', ['drain', 'pipe']], ['77 Sallow Bend', null], ['118 Tern Hollow Ln', ['roof', 'drain', 'pipe', 'pump']],
    ]);
  });

  it('sold Tern Hollow at about the illustrative price of $13,588.85 (ours), from the take-off of its design', async () => {
    const job = jobs.get('118 Tern Hollow Ln');
    const { items } = await get<{ items: PriceSheet[] }>(owner, `/jobs/${job?.id ?? ''}/price-sheets`);
    expect(items).toHaveLength(1);
    expect(items[0]).toMatchObject({ status: 'frozen', missing: [] });
    expect(Math.abs((items[0]?.totals.price ?? 0) - 1_358_885)).toBeLessThan(15_000);
    const { items: offers } = await get<{ items: Offer[] }>(owner, `/jobs/${job?.id ?? ''}/offers`);
    expect(offers).toMatchObject([{ status: 'accepted', acceptedName: 'Marisol Pruett', price: items[0]?.totals.price }]);
    expect(offers[0]?.acceptedSha256).toBe(offers[0]?.sha256);
  });

  it('has every item of the checklist proven, the pump-down passed and the system handed over', async () => {
    const id = jobs.get('118 Tern Hollow Ln')?.id ?? '';
    const checklist = await get<Checklist>(owner, `/jobs/${id}/checklist`);
    expect(checklist.items.filter(({ state }) => state !== 'proven').map(({ key }) => key)).toEqual([]);
    expect(checklist.items.flatMap(({ facts }) => facts).filter(({ verdict }) => verdict !== 'kept')).toEqual([]);
    const { items: proofs } = await get<{ items: ProofTest[] }>(owner, `/jobs/${id}/proof-tests`);
    expect(proofs).toMatchObject([{ verdict: 'pass' }]);
    const { handover } = await get<{ handover: Handover | null }>(owner, `/jobs/${id}/handover`);
    expect(handover?.asBuilt.length).toBeGreaterThan(8);
    const job = await get<Job>(owner, `/jobs/${id}`);
    expect(job.history.map(({ stage }) => stage)).toEqual(['intake', 'visit', 'design', 'pricing', 'offered', 'accepted', 'released', 'installing', 'proving', 'handedOver']);
    expect(job.history.map(({ at }) => at)).toEqual(job.history.map(({ at }) => at).sort());
  });

  it('shows the customer the why, the photos, the proof and the care, and no cost', async () => {
    const link = signIns.find(({ role }) => role === 'customer')?.link ?? '';
    expect(link).toMatch(/^http:\/\/demo\.test\/drain#[\w-]{43}$/);
    await makeCopies(test);
    const customer = await openLink(test, link);
    const page = await get<Portal>(customer, '/portal');
    expect(page).toMatchObject({ stage: 'handedOver', customerName: 'Marisol and Dwight Pruett', proof: { verdict: 'pass' }, offer: { status: 'accepted' } });
    expect(page.why.length).toBeGreaterThan(12);
    expect(page.photos.length).toBeGreaterThan(5);
    expect(page.handover?.care.length).toBeGreaterThan(8);
    expect(JSON.stringify(page)).not.toMatch(/margin|markup|unitCost|labourRate/i);
    const photo = await customer.get(`/api/v1/portal/photos/${page.photos[0]?.id ?? ''}`).expect(200);
    expect(photo.headers['content-type']).toMatch(/^image\//);
  });

  it('has Wicker Road released to dig: what stands before the trenches is proven, the rest is open', async () => {
    const { items } = await get<Checklist>(owner, `/jobs/${jobs.get('40 Wicker Rd')?.id ?? ''}/checklist`);
    expect(items.filter(({ group, state }) => group === 'A' && state !== 'proven').map(({ key }) => key)).toEqual([]);
    expect(items.filter(({ group }) => group !== 'A').every(({ state }) => state === 'open')).toBe(true);
    expect(items.length).toBeGreaterThan(20);
  });

  it('writes the letter of Sallow Bend and has no design for it', async () => {
    const id = jobs.get('77 Sallow Bend')?.id ?? '';
    const letter = await get<{ observations: unknown[]; referTo: string[] }>(owner, `/jobs/${id}/referral-letter`);
    expect(letter.observations).toHaveLength(7);
    expect((await get<{ items: unknown[] }>(owner, `/jobs/${id}/designs`)).items).toEqual([]);
  });

  it('is not told twice, and not where somebody works already', async () => {
    const before = await countOf('job');
    const again = await loadDemo(test.app);
    expect(again?.map(({ role }) => role)).toEqual(['owner', 'estimator', 'crew', 'customer']);
    expect(await countOf('job')).toBe(before);
  });
});

async function countOf(table: string): Promise<number> {
  const { rows } = await test.owner.query<{ n: string }>(`SELECT count(*) AS n FROM ${table}`);
  return Number(rows[0]?.n);
}

/** What the queue does after the commit; no worker runs in this test. */
async function makeCopies({ app, owner: pool, clock }: TestApp): Promise<void> {
  const { rows } = await pool.query<{ id: string; company_id: string }>('SELECT id, company_id FROM photo WHERE for_customer');
  for (const { id, company_id: companyId } of rows) await app.get(CopiesService).make(systemActor(companyId, 'test', clock.now()), id);
}
