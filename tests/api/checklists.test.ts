import { randomUUID } from 'node:crypto';
import type { Checklist, ChecklistItem, Job } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ChecklistBuilder } from '../../apps/api/src/common/checklistBuilder.ts';
import { memberActor } from '../../apps/api/src/common/actor.ts';
import { Database } from '../../apps/api/src/common/database.ts';
import { Worker } from '../../apps/api/src/common/worker.ts';
import { key, makeCompany, makePerson, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, newJob, post, releasedJob } from '../support/builders.ts';
import { mayDig, Phone, picture, sendPhoto } from '../support/work.ts';

let test: TestApp;
let ours: TestCompany;
let theirs: TestCompany;
let job: Job;
let phone: Phone;
let owner: Phone;
let estimator: Phone;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  theirs = await makeCompany(test, 'Other Yards');
  job = (await releasedJob(test, ours)).job;
  await mayDig(ours.crew.agent, job.id);
  [phone, owner, estimator] = [await Phone.of(test, ours.crew, job.id), await Phone.of(test, ours.owner, job.id), await Phone.of(test, ours.estimator, job.id)];
}, 180_000);
afterAll(() => test.close());

const begin = (agent: TestCompany['owner']['agent'], itemKey: string) => agent.post(`/api/v1/jobs/${job.id}/checklist/${encodeURIComponent(itemKey)}/begin`).set(key()).send({});
const stateColumn = async (itemKey: string) => (await test.owner.query<{ state: string }>('SELECT state FROM checklist_item WHERE job_id = $1 AND key = $2', [job.id, itemKey])).rows[0]?.state;

describe('the checklist of a released job', () => {
  it('is built from the build revision, once, and read by the team only', async () => {
    const list = await phone.checklist();
    expect(list.revisionId).toBe(job.buildRevisionId);
    expect(list.items.length).toBeGreaterThanOrEqual(48);
    expect(list.items.find((item) => item.key === 'I3:CH1')).toMatchObject({ group: 'I', part: 'CH1', state: 'open', heldBy: [{ holdPoint: 'HP-5', items: ['D2:CH1'] }, { holdPoint: 'HP-13', items: ['D4:CH1', 'I1:CH1', 'I2:CH1'] }] });
    await theirs.owner.agent.get(`/api/v1/jobs/${job.id}/checklist`).expect(404);
    const stranger = await makePerson(test, ours.id, ['crew']);
    await stranger.agent.get(`/api/v1/jobs/${job.id}/checklist`).expect(404);
    const unbuilt = await newJob(ours);
    await ours.owner.agent.get(`/api/v1/jobs/${unbuilt.id}/checklist`).expect(409);
  });
});

describe('the pour', () => {
  it('is refused while D4 lacks its photo, by begin and by facts, for crew, estimator and owner alike', async () => {
    for (const itemKey of ['A2', 'B2', 'D2:CH1', 'I1:CH1', 'I2:CH1']) await phone.prove(itemKey);
    await phone.prove('D4:CH1', ['photo']);
    expect(await phone.item('D4:CH1')).toMatchObject({ state: 'started', missing: ['photo:2', 'tick'] });
    for (const [person, own] of [[ours.crew, phone], [ours.estimator, estimator], [ours.owner, owner]] as const) {
      const refused = await begin(person.agent, 'I3:CH1').expect(409);
      expect(refused.body).toMatchObject({ code: 'checklist.held', params: { item: 'I3:CH1', holdPoint: 'HP-13', missing: 'D4:CH1' } });
      const facts = await own.prove('I3:CH1');
      expect(facts.map(({ verdict, reason }) => [verdict, reason])).toEqual(facts.map(() => ['refused', 'held:HP-13']));
    }
    expect(await phone.item('I3:CH1')).toMatchObject({ state: 'open', heldBy: [{ holdPoint: 'HP-13', items: ['D4:CH1'] }] });
    expect(await stateColumn('I3:CH1')).toBe('open');
  }, 180_000);

  it('opens with D4, I1 and I2 proven, and not with a photo of two hours ago', async () => {
    await phone.prove('D4:CH1', ['ticked']);
    // The tick of before the photos does not say that no grate was lifted since.
    expect(await phone.item('D4:CH1')).toMatchObject({ state: 'started', missing: ['tick'] });
    await phone.prove('D4:CH1', ['photo']);
    expect(await stateColumn('D4:CH1')).toBe('proven');
    test.clock.forward(7201);
    expect((await begin(ours.owner.agent, 'I3:CH1').expect(409)).body.params).toMatchObject({ holdPoint: 'HP-13', missing: 'D4:CH1' });
    await phone.prove('D4:CH1');
    const begun = await begin(ours.crew.agent, 'I3:CH1').expect(200);
    expect(begun.body).toMatchObject({ state: 'started', heldBy: [] });
    // Once begun, the concrete may take its time.
    test.clock.forward(10_800);
    expect((await phone.prove('I3:CH1')).map(({ verdict }) => verdict)).toEqual(['kept', 'kept', 'kept', 'kept']);
    expect(await phone.item('I3:CH1')).toMatchObject({ state: 'proven', missing: [] });
    expect((await get<Job>(ours.owner.agent, `/jobs/${job.id}`)).stage).toBe('installing');
  }, 180_000);
});

describe('HP-1', () => {
  it('needs the ticket beside its own evidence: expired is not legal to dig', async () => {
    expect((await begin(ours.crew.agent, 'C5')).status).toBe(200);
    const { body: tickets } = await ours.crew.agent.get(`/api/v1/jobs/${job.id}/locate-tickets`);
    for (const { id } of tickets.items) await post(ours.crew.agent, `/jobs/${job.id}/locate-tickets/${id}/close`, {}, 200);
    expect((await phone.item('A2')).state).toBe('proven');
    expect((await begin(ours.owner.agent, 'C8').then((r) => r.status))).toBe(404); // this yard has no such item
    expect((await begin(ours.owner.agent, 'C1:X1').expect(409)).body.params).toMatchObject({ holdPoint: 'HP-1' });
    await mayDig(ours.crew.agent, job.id);
    expect((await begin(ours.owner.agent, 'C1:X1').expect(409)).body.params).toMatchObject({ holdPoint: 'HP-3' });
  });
});

describe('a fact', () => {
  it('sent again is stored once and comes back as it was judged', async () => {
    const fact = phone.fact(await phone.item('B7'), { kind: 'ticked', note: 'plywood down' });
    const first = await phone.send([fact]);
    const again = await phone.send([fact, fact]);
    expect(again.facts).toEqual([first.facts[0], first.facts[0]]);
    expect((await test.owner.query('SELECT 1 FROM field_fact WHERE id = $1', [fact.id])).rowCount).toBe(1);
  });

  it('for an older requirement, an unknown item or an unknown measure is kept with the reason and does not count', async () => {
    const b7 = await phone.item('B7');
    const b2 = await phone.item('B2');
    const { facts } = await phone.send([
      phone.fact(b7, { kind: 'ticked', note: '' }, { requirementHash: 'f'.repeat(64) }),
      phone.fact(b7, { kind: 'ticked', note: '' }, { itemKey: 'Z9' }),
      phone.fact(b2, { kind: 'measured', name: 'nothing', value: 1 }),
      phone.fact(b2, { kind: 'notApplicable', reason: 'not here' }),
      phone.fact(b2, { kind: 'signed', signer: 'inspector', name: 'A', licence: '', statement: '' }),
      phone.fact(b2, { kind: 'waived', reason: 'the crew says so' }),
    ]);
    expect(facts.map(({ verdict, reason }) => `${verdict} ${String(reason)}`)).toEqual([
      'late requirementChanged', 'late noSuchItem', 'refused noSuchMeasure', 'refused evidenceOnly', 'refused wrongSigner', 'refused ownerOnly',
    ]);
    expect((await phone.item('B2')).state).toBe('proven');
  });

  it('of an item that owner or estimator ticks is refused for crew', async () => {
    const a1 = await phone.item('A1');
    expect((await phone.send([phone.fact(a1, { kind: 'ticked', note: '' })])).facts.map(({ reason }) => reason)).toEqual(['officeOnly']);
    expect((await phone.prove('A1')).map(({ reason }) => reason)).toEqual(['officeSaysNot']);
    expect((await estimator.prove('A1')).map(({ verdict }) => verdict)).toEqual(['kept']);
  });

  it('outside the limits of its measure fails a proven item, whoever ticked it', async () => {
    const b2 = await phone.item('B2');
    await phone.send([phone.fact(b2, { kind: 'measured', name: 'check2', value: 0.01 })]);
    expect(await phone.item('B2')).toMatchObject({ state: 'failed', missing: ['outside:check2', 'correction'] });
    expect(await stateColumn('B2')).toBe('failed');
    expect((await get<Job>(ours.owner.agent, `/jobs/${job.id}`)).holds).toMatchObject([{ waitsFor: 'crew', code: 'jobs.hold.failed', params: { point: 'checklists.holdPoint.2', count: 1 } }]);
  });

  it('typed well after that does not close it: it is put right, shown again and signed by somebody else', async () => {
    const say = async (...bodies: Parameters<Phone['fact']>[1][]) => {
      for (const body of bodies) await phone.send([phone.fact(await phone.item('B2'), body)]);
      return phone.item('B2');
    };
    const signed = (name: string) => ({ kind: 'signed', signer: 'crewLead', name, licence: '', statement: '' }) as const;
    expect((await say({ kind: 'measured', name: 'check2', value: 0.001 })).state).toBe('failed');
    await say({ kind: 'corrected', note: 'the tripod had sunk: set up again' });
    await phone.prove('B2');
    expect(await say(signed('test CREW'))).toMatchObject({ state: 'started', missing: ['signature:second'] });
    expect(await say(signed('Lena Ortega'))).toMatchObject({ state: 'proven', missing: [] });
    expect((await get<Job>(ours.owner.agent, `/jobs/${job.id}`)).holds).toEqual([]);
  });

  it('mistyped is taken back by the same person within minutes, with a reason that stays on record', async () => {
    const wrong = phone.fact(await phone.item('B2'), { kind: 'measured', name: 'check1', value: 1 });
    await phone.send([wrong]);
    const strike = async (by: Phone, reason: string) => (await by.send([by.fact(await phone.item('B2'), { kind: 'struck', figure: wrong.id, reason })])).facts[0];
    expect(await strike(phone, 'typo')).toMatchObject({ verdict: 'refused', reason: 'saysNothing' });
    await strike(owner, 'It must have been a slip');
    expect((await phone.item('B2')).state).toBe('failed');
    await strike(phone, 'One foot typed in place of nought');
    const after = await phone.item('B2');
    expect(after.state).toBe('proven');
    expect(after.facts.map(({ fact }) => fact)).toEqual(expect.arrayContaining([wrong, expect.objectContaining({ kind: 'struck', reason: 'One foot typed in place of nought' })]));
  });

  it('of two phones that did not know of each other is disputed until one looks', async () => {
    const bare = (item: ChecklistItem) => ({ ...item, facts: [] });
    const b8 = await phone.item('B8');
    await phone.send([phone.fact(bare(b8), { kind: 'ticked', note: '' })]);
    await owner.send([owner.fact(bare(b8), { kind: 'notApplicable', reason: 'there is no pump yet' })]);
    expect((await phone.item('B8')).state).toBe('disputed');
    const crewSays = await phone.send([phone.fact(await phone.item('B8'), { kind: 'notApplicable', reason: 'looked again' })]);
    expect(crewSays.facts[0]).toMatchObject({ verdict: 'refused', reason: 'officeSaysNot' });
    expect((await phone.item('B8')).state).toBe('disputed');
    await estimator.send([estimator.fact(await phone.item('B8'), { kind: 'notApplicable', reason: 'looked again' })]);
    expect((await phone.item('B8')).state).toBe('notApplicable');
  });

  it('that comes before its photo is judged again when the photo is there', async () => {
    const item = await phone.item('B3');
    const bytes = await picture();
    const photoId = randomUUID();
    const early = await phone.send([phone.fact(item, { kind: 'photo', photoId, takenAt: test.clock.now().toISOString() })]);
    expect(early.facts[0]).toMatchObject({ verdict: 'refused', reason: 'photoUnknown' });
    await sendPhoto(ours.crew.agent, job.id, bytes, { id: photoId, itemKey: 'B3', takenAt: test.clock.now().toISOString() }).expect(201);
    await test.app.get(Worker).drain();
    expect((await phone.item('B3')).facts.at(-1)).toMatchObject({ verdict: 'kept', reason: null });
    expect(await stateColumn('B3')).toBe('started');
    const wrong = await phone.send([phone.fact(await phone.item('B7'), { kind: 'photo', photoId, takenAt: test.clock.now().toISOString() })]);
    expect(wrong.facts[0]).toMatchObject({ verdict: 'refused', reason: 'photoOfOtherItem' });
  });

  it('of a phone that was cut off goes into quarantine, and the phone reads nothing', async () => {
    const lost = await Phone.of(test, ours.crew, job.id);
    const item = await lost.item('B7');
    await ours.owner.agent.post(`/api/v1/devices/${lost.id}/cut-off`).set(key()).send({}).expect(200);
    const { facts, checklist } = await lost.send([lost.fact(item, { kind: 'failed', reason: 'all broken' })]);
    expect(facts[0]).toMatchObject({ verdict: 'quarantined', reason: 'deviceCutOff' });
    expect(checklist).toMatchObject({ items: [], holdPoints: [] });
    expect((await phone.item('B7')).state).not.toBe('failed');
  });

  it.each([
    ['of a phone that nobody made known', async () => [phone.fact(await phone.item('B7'), { kind: 'ticked', note: '' }, { deviceId: randomUUID() })], 404],
    ['with an unknown key', async () => [{ ...phone.fact(await phone.item('B7'), { kind: 'ticked', note: '' }), mood: 'good' }], 400],
    ['with U+0000', async () => [phone.fact(await phone.item('B7'), { kind: 'ticked', note: 'a\u0000b' })], 400],
    ['of an unknown kind', async () => [{ ...phone.fact(await phone.item('B7'), { kind: 'ticked', note: '' }), kind: 'guessed' }], 400],
  ])('%s is answered with a problem and changes nothing', async (_what, make, status) => {
    const before = (await test.owner.query('SELECT count(*) AS n FROM field_fact')).rows[0].n;
    await post(ours.crew.agent, `/jobs/${job.id}/facts`, { facts: await make() }, status);
    expect((await test.owner.query('SELECT count(*) AS n FROM field_fact')).rows[0].n).toBe(before);
  });
});

describe('a waiver', () => {
  it("is the owner's alone, for an item of a hold point, with a reason that stays on record", async () => {
    const waive = (agent: TestCompany['owner']['agent'], itemKey: string) => agent.post(`/api/v1/jobs/${job.id}/checklist/${itemKey}/waive`).set(key()).send({ reason: 'Slab scan not needed: the slab was poured last year' });
    await waive(ours.crew.agent, 'B6').expect(403);
    await waive(ours.estimator.agent, 'B6').expect(403);
    await waive(ours.owner.agent, 'B7').expect(409);
    await waive(theirs.owner.agent, 'B6').expect(404);
    const list = (await waive(ours.owner.agent, 'B6').expect(200)).body as Checklist;
    expect(list.items.find((item) => item.key === 'B6')).toMatchObject({ state: 'waived', missing: [] });
    expect(list.holdPoints.find(({ id }) => id === 'HP-3 scan')).toMatchObject({ open: true, waived: true });
    expect(list.items.find((item) => item.key === 'B6')?.facts[0]?.fact).toMatchObject({ kind: 'waived' });
  });
});

describe('a new build revision', () => {
  it('keeps what is proven under the same requirement and opens the rest with the reason', async () => {
    const actor = memberActor({ id: ours.owner.id, companyId: ours.id, roles: ['owner'] }, test.clock.now(), 'test');
    // As if the earlier revision had asked something else of I1: the same facts no longer answer what is asked now.
    await test.owner.query(`UPDATE checklist_item SET requirement_hash = repeat('0', 64) WHERE job_id = $1 AND key = 'I1:CH1'`, [job.id]);
    await test.owner.query(`ALTER TABLE field_fact DISABLE TRIGGER keep_fact`);
    await test.owner.query(`UPDATE field_fact SET requirement_hash = repeat('0', 64) WHERE job_id = $1 AND item_key = 'I1:CH1'`, [job.id]);
    await test.owner.query(`ALTER TABLE field_fact ENABLE TRIGGER keep_fact`);
    await test.app.get(Database).write(actor, (tx) => test.app.get(ChecklistBuilder).rebuildFor(tx, actor, job.id));
    expect(await phone.item('I1:CH1')).toMatchObject({ state: 'open', reopenedReason: 'reopened' });
    expect((await phone.item('I1:CH1')).facts.length).toBeGreaterThan(0);
    expect(await phone.item('D4:CH1')).toMatchObject({ state: 'proven', reopenedReason: null });
    await phone.prove('I1:CH1');
    expect((await phone.item('I1:CH1')).state).toBe('proven');
  });
});
