import { randomUUID } from 'node:crypto';
import type { Job, JobRow } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { call, get, newJob, post, releasedJob } from '../support/builders.ts';

let test: TestApp;
let ours: TestCompany;
let theirs: TestCompany;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  theirs = await makeCompany(test, 'Other Yards');
});
afterAll(() => test.close());

describe('taking a call', () => {
  it('makes a job with customer, property, urgency, history and the hold that follows from the complaint', async () => {
    const job = await newJob(ours);
    expect(job).toMatchObject({ title: call.title, stage: 'intake', urgency: 'houseEntered', customerName: 'Marisol Pruett', customer: call.customer, property: call.property, complaint: call.complaint });
    expect(job.history.map(({ stage, by }) => [stage, by])).toEqual([['intake', 'Test estimator']]);
    // Called on Monday 2 March 2026, three working days.
    expect(job.holds).toMatchObject([{ code: 'jobs.hold.visitSoon', waitsFor: 'us', params: { by: '2026-03-05' } }]);
  });

  it('keeps names, phones, address and gate code sealed, in every column of every table', async () => {
    await newJob(ours);
    const secrets = ['Marisol', '555-0142', 'Tern Hollow Ln', '#4711*', 'marisol@example.test'];
    const { rows } = await test.owner.query<{ table_name: string }>(`SELECT table_name FROM information_schema.tables WHERE table_schema = 'public' AND table_type = 'BASE TABLE'`);
    for (const { table_name: table } of rows) {
      const dump = await test.owner.query<{ row: string }>(`SELECT t::text AS row FROM "${table}" t`);
      const bytes = dump.rows.map(({ row }) => row + Buffer.from((/\\x([0-9a-f]+)/.exec(row) ?? [])[1] ?? '', 'hex').toString('latin1')).join('\n');
      expect(secrets.filter((secret) => bytes.includes(secret)), table).toEqual([]);
    }
  });

  it('water on dry days is a leak test first', async () => {
    const job = await newJob(ours, { complaint: { ...call.complaint, onDryDays: true } });
    expect([job.urgency, job.holds[0]?.code]).toEqual(['leakTestFirst', 'jobs.hold.leakTest']);
  });

  it('eight at once take eight numbers', async () => {
    const made = await Promise.all(Array.from({ length: 8 }, () => newJob(ours)));
    expect(new Set(made.map((job) => job.number)).size).toBe(8);
  });

  it('the same key twice is one job', async () => {
    const once = key();
    const first = await ours.estimator.agent.post('/api/v1/jobs').set(once).send(call).expect(201);
    const again = await ours.estimator.agent.post('/api/v1/jobs').set(once).send(call).expect(201);
    expect(again.body.id).toBe(first.body.id);
  });

  it.each([
    ['an unknown key', { ...call, colour: 'blue' }],
    ['U+0000 in a name', { ...call, customer: { ...call.customer, name: 'A\u0000B' } }],
    ['a zone that does not exist', { ...call, property: { ...call.property, timeZone: 'Mars/Base' } }],
    ['a depth that is text', { ...call, complaint: { ...call.complaint, depth: 'deep' } }],
  ])('refuses %s and makes nothing', async (_, body) => {
    const before = await count();
    const refused = await ours.estimator.agent.post('/api/v1/jobs').set(key()).send(body).expect(400);
    expect(refused.body.code).toBe('request.invalid');
    expect(await count()).toBe(before);
  });
});

describe('who sees a job', () => {
  it('another company does not, by list or by id', async () => {
    const job = await newJob(ours);
    await theirs.owner.agent.get(`/api/v1/jobs/${job.id}`).expect(404);
    const { items } = await get<{ items: JobRow[] }>(theirs.owner.agent, '/jobs');
    expect(items).toEqual([]);
  });

  it('crew see it from the moment they are on it', async () => {
    const job = await newJob(ours);
    await ours.crew.agent.get(`/api/v1/jobs/${job.id}`).expect(404);
    const assignments = [{ memberId: ours.crew.id, role: 'crew' }];
    await ours.owner.agent.put(`/api/v1/jobs/${job.id}/assignments`).set(key()).send({ assignments }).expect(200);
    const seen = await get<Job>(ours.crew.agent, `/jobs/${job.id}`);
    expect(seen.assignments).toEqual([{ memberId: ours.crew.id, name: 'Test crew', role: 'crew' }]);
    const { items } = await get<{ items: JobRow[] }>(ours.crew.agent, '/jobs');
    expect(items.map(({ id }) => id)).toEqual([job.id]);
  });

  it('nobody is put on a job in a role that they do not hold, nor a stranger', async () => {
    const job = await newJob(ours);
    for (const assignment of [{ memberId: ours.crew.id, role: 'owner' }, { memberId: theirs.crew.id, role: 'crew' }, { memberId: randomUUID(), role: 'crew' }]) {
      const refused = await ours.owner.agent.put(`/api/v1/jobs/${job.id}/assignments`).set(key()).send({ assignments: [assignment] });
      expect([refused.status, refused.body.code]).toEqual([400, 'request.invalid']);
    }
  });

  it('the list comes in pages, newest first, without a gap or a double', async () => {
    const company = await makeCompany(test, 'Paging Yards');
    for (let made = 0; made < 7; made += 1) await newJob(company);
    const numbers: number[] = [];
    let cursor: string | null = null;
    do {
      const page: { items: JobRow[]; next: string | null } = await get(company.owner.agent, `/jobs?limit=3${cursor === null ? '' : `&cursor=${cursor}`}`);
      expect(page.items.length).toBeLessThanOrEqual(3);
      numbers.push(...page.items.map(({ number }) => number));
      cursor = page.next;
    } while (cursor !== null);
    expect(numbers).toEqual([7, 6, 5, 4, 3, 2, 1]);
    await company.owner.agent.get('/api/v1/jobs?cursor=drop').expect(400);
  });
});

describe('changing a job', () => {
  it('wants the version that was read, and seals the new name', async () => {
    const job = await newJob(ours);
    const change = { customer: { ...call.customer, name: 'Dwight Pruett' } };
    await ours.estimator.agent.patch(`/api/v1/jobs/${job.id}`).set(key()).send(change).expect(428);
    const changed = await ours.estimator.agent.patch(`/api/v1/jobs/${job.id}`).set(key()).set('If-Match', `"${String(job.version)}"`).send(change).expect(200);
    expect(changed.body).toMatchObject({ customerName: 'Dwight Pruett', version: job.version + 1 });
    await ours.estimator.agent.patch(`/api/v1/jobs/${job.id}`).set(key()).set('If-Match', `"${String(job.version)}"`).send({ title: 'Late' }).expect(412);
    expect((await get<Job>(ours.estimator.agent, `/jobs/${job.id}`)).title).toBe(call.title);
  });

  it('crew change nothing', async () => {
    const job = await newJob(ours);
    const refused = await ours.crew.agent.patch(`/api/v1/jobs/${job.id}`).set(key()).set('If-Match', '"1"').send({ title: 'Mine' });
    expect([refused.status, refused.body.code]).toEqual([403, 'auth.forbidden']);
    expect((await get<Job>(ours.owner.agent, `/jobs/${job.id}`)).title).toBe(call.title);
  });

  it('goes to an engineer with a letter, and is not released from there', async () => {
    const job = await newJob(ours);
    await ours.estimator.agent.get(`/api/v1/jobs/${job.id}/referral-letter`).expect(409);
    const moved = await post<Job>(ours.estimator.agent, `/jobs/${job.id}/stage`, { stage: 'referred', reason: 'The wall of Mrs. Venn leans' }, 200);
    expect(moved.holds).toMatchObject([{ code: 'jobs.hold.referred' }]);
    const letter = await get<{ observations: unknown[]; writtenAt: string }>(ours.estimator.agent, `/jobs/${job.id}/referral-letter`);
    expect(letter).toMatchObject({ observations: [], writtenAt: test.clock.now().toISOString() });
    const trail = await test.owner.query<{ all: string }>(`SELECT string_agg(params::text, ' ') AS all FROM audit_entry WHERE job_id = $1`, [job.id]);
    expect(trail.rows[0]?.all).not.toContain('Venn');
  });
});

describe('the release to dig', () => {
  it('sets the build revision, builds the checklist and is told to nobody but the owner', async () => {
    const { job, revision, offer } = await releasedJob(test, ours);
    const released = await get<Job>(ours.owner.agent, `/jobs/${job.id}`);
    expect(released).toMatchObject({ stage: 'released', buildRevisionId: revision.id, releasedAt: test.clock.now().toISOString() });
    const items = await test.owner.query('SELECT 1 FROM checklist_item WHERE job_id = $1 AND revision_id = $2', [job.id, revision.id]);
    expect(items.rowCount).toBeGreaterThan(20);
    await ours.estimator.agent.post(`/api/v1/jobs/${job.id}/release`).set(key()).send({ offerId: offer.id }).expect(403);
    await ours.owner.agent.post(`/api/v1/jobs/${job.id}/release`).set(key()).send({ offerId: randomUUID() }).expect(404);
  });
});

async function count(): Promise<number> {
  const { rows } = await test.owner.query<{ n: string }>('SELECT count(*) AS n FROM job');
  return Number(rows[0]?.n);
}

describe('finding a job', () => {
  const titles = async (who: TestCompany['owner'], query: object) => (await who.agent.get('/api/v1/jobs').query(query).expect(200)).body as { items: JobRow[]; next: string | null };

  it('by words of its sealed customer and address, also when it is over, and only among those that the reader may see', async () => {
    const company = await makeCompany(test, 'Search Yards');
    const nandu = await newJob(company, { title: 'Ñandú Court', customer: { ...call.customer, name: 'Ágata Fern' } });
    const over = await newJob(company, { title: 'Old Mill', property: { ...call.property, address: '9 Larch Row' } });
    await newJob(await makeCompany(test, 'Yards Elsewhere'), { title: 'Ñandú Court' });
    await post(company.owner.agent, `/jobs/${over.id}/stage`, { stage: 'declined', reason: 'Too far away.' }, 200);
    const found = async (words: string) => (await titles(company.owner, { words })).items.map(({ title }) => title);
    expect(await found('nandu agata')).toEqual(['Ñandú Court']);
    expect(await found('LARCH')).toEqual(['Old Mill']);
    expect(await found(String(nandu.number))).toContain('Ñandú Court');
    expect(await found('larch nandu')).toEqual([]);
    expect((await titles(company.crew, { words: 'nandu' })).items).toEqual([]);
    expect((await titles(company.owner, {})).items.map(({ title }) => title)).toEqual(['Old Mill', 'Ñandú Court']);
  });

  it('page by page, without one twice', async () => {
    const company = await makeCompany(test, 'Paged Yards');
    for (const title of ['Elm 1', 'Oak', 'Elm 2', 'Elm 3']) await newJob(company, { title });
    const first = await titles(company.estimator, { words: 'elm', limit: 2 });
    expect(first.items.map(({ title }) => title)).toEqual(['Elm 3', 'Elm 2']);
    const second = await titles(company.estimator, { words: 'elm', limit: 2, cursor: first.next });
    expect([second.items.map(({ title }) => title), second.next]).toEqual([['Elm 1'], null]);
  });
});
