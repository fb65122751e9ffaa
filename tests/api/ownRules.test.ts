import type { Checklist, Portal } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, releasedJob } from '../support/builders.ts';
import { mayDig, Phone } from '../support/work.ts';

describe("a company's own rules of the checklist", () => {
  let test: TestApp;
  let ours: TestCompany;
  let others: TestCompany;

  beforeAll(async () => {
    test = await startApp();
    ours = await makeCompany(test);
    others = await makeCompany(test, 'Other Yards');
  }, 180_000);
  afterAll(() => test.close());

  const change = { item: 'D4', leftOut: false, what: '', adds: '', photos: 1, why: '' };
  const own = { id: 'C.own1', applies: 'digging', what: 'Silt sock at the curb inlet', acceptance: 'No brown water in the street', photo: '', photos: 1, whyCrew: '', whyHome: '' };
  const set = (who: TestCompany['owner'], checklist: object, version: number) => who.agent.patch('/api/v1/company').set('If-Match', `"${String(version)}"`).set(key()).send({ checklist });

  it('are the owner\'s, and weaken no hold point without a reason that stands with a name', async () => {
    await set(ours.estimator, { changes: [], own: [own] }, 1).expect(403);
    const refused = await set(ours.owner, { changes: [change], own: [own] }, 1).expect(422);
    expect(refused.body).toMatchObject({ code: 'checklist.rule', params: { item: 'D4', fault: 'errors.checklist.rule.weakerWithoutReason' } });
    const gone = await set(ours.owner, { changes: [{ ...change, leftOut: true, photos: null, why: 'It takes too long' }], own: [] }, 1).expect(422);
    expect(gone.body.params.fault).toBe('errors.checklist.rule.leavesOutHoldPoint');
    await set(ours.owner, { changes: [{ ...change, by: 'Somebody else' }], own: [] }, 1).expect(400);
    const held = await set(ours.owner, { changes: [{ ...change, why: 'One wide photo shows both ends' }], own: [own] }, 1).expect(200);
    expect(held.body.settings.checklist.changes).toMatchObject([{ item: 'D4', by: 'Test owner', why: 'One wide photo shows both ends' }]);
    // Nobody else's work waits for it, and somebody could come to harm.
    const unsaid = await set(ours.owner, { changes: [{ ...change, item: 'B8', leftOut: true, photos: null }], own: [] }, 2).expect(422);
    expect(unsaid.body.params).toEqual({ item: 'B8', fault: 'errors.checklist.rule.weakerWithoutReason' });
    const unfit = await set(ours.owner, { changes: [{ ...change, item: 'B2', photos: null, figures: [{ measure: 'check1', min: 1, max: null }] }], own: [] }, 2).expect(422);
    expect(unfit.body.params.fault).toBe('errors.checklist.rule.limitUnfit');
    const again = await set(ours.owner, { changes: [{ ...change, why: 'One wide photo shows both ends' }, { ...change, item: 'B7', leftOut: true, photos: null, why: 'The fence company does it the day before' }], own: [own] }, 2).expect(200);
    expect(again.body.settings.checklist.changes[0]).toEqual(held.body.settings.checklist.changes[0]);
    const { rows } = await test.owner.query(`SELECT params FROM audit_entry WHERE company_id = $1 AND action = 'company.updated' ORDER BY id DESC LIMIT 1`, [ours.id]);
    expect(rows[0].params).toMatchObject({ fields: 'checklist', steps: 'D4 1 photos; B7 left out; C.own1' });
  });

  it('are in the list of a job that is released afterwards; its own step is recorded like any other, and the pour still waits', async () => {
    const before = await releasedJob(test, others);
    expect((await get<Portal>(before.customer, '/portal')).weaker).toEqual([]);
    const { job, customer } = await releasedJob(test, ours);
    await mayDig(ours.crew.agent, job.id);
    const list = (await get<Checklist>(ours.crew.agent, `/jobs/${job.id}/checklist`)).items;
    expect(list.some(({ template }) => template === 'B7')).toBe(false);
    expect(list.find(({ key: at }) => at === 'C.own1')).toMatchObject({ group: 'C', state: 'open', requirement: { minPhotos: 1, params: { ownWhat: 'Silt sock at the curb inlet' } } });
    const phone = await Phone.of(test, ours.crew, job.id);
    await phone.prove('C.own1');
    expect(await phone.item('C.own1')).toMatchObject({ state: 'proven' });
    for (const at of ['A2', 'B2', 'D2:CH1', 'I1:CH1', 'I2:CH1']) await phone.prove(at);
    expect((await phone.item('I3:CH1')).heldBy).toEqual([{ holdPoint: 'HP-13', items: ['D4:CH1'] }]);
    // One photo is enough for this company, and the reason stands in what was asked for.
    await phone.prove('D4:CH1');
    const taped = await phone.item('D4:CH1');
    expect([taped.state, taped.requirement.minPhotos, taped.requirement.params['weakerBy']]).toEqual(['proven', 1, 'Test owner']);
    expect((await phone.item('I3:CH1')).heldBy).toEqual([]);
    // The customer is told, once, of what is asked for less; what is asked for otherwise is the company's own business.
    expect((await get<Portal>(customer, '/portal')).weaker).toEqual([{ item: 'D4', photos: 1, builtIn: 2, limits: null, reason: 'One wide photo shows both ends', by: 'Test owner' }]);
  });
});
