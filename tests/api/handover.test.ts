import { commissioningFlow, type DesignDocument } from '@yardfall/calc';
import { canonicalBytes, type Checklist, type Handover, type Job, type PrivateLines, type ProofTest, sha256Hex } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, newJob, post, releasedJob, siteDocument } from '../support/builders.ts';
import { mayDig, Phone } from '../support/work.ts';

let test: TestApp;
let ours: TestCompany;
let theirs: TestCompany;
let job: Job;
let crew: Phone;
let office: Phone;
const document: DesignDocument = siteDocument('tern-hollow');
const basin = document.system.parts.find((part) => part.kind === 'basin');
if (basin?.kind !== 'basin') throw new Error('the site has no basin');

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  theirs = await makeCompany(test, 'Other Yards');
  job = (await releasedJob(test, ours)).job;
  await mayDig(ours.crew.agent, job.id);
  [crew, office] = [await Phone.of(test, ours.crew, job.id), await Phone.of(test, ours.owner, job.id)];
}, 180_000);
afterAll(() => test.close());

const upperLevel = basin.onLevel;
const lowerLevel = basin.onLevel - 0.254;
const area = (Math.PI / 4) * basin.diameter ** 2;
const predicted = commissioningFlow(document, 'M1', (upperLevel + lowerLevel) / 2).netFlow;
/** A run that measures this share of what the design promises. */
const run = (share: number, emptyLine = false) => ({ upperLevel, lowerLevel, volume: area * 0.254, seconds: (area * 0.254) / (predicted * share), emptyLine });
const record = (runs: readonly object[], status = 201, note = '') => post<ProofTest>(ours.crew.agent, `/jobs/${job.id}/proof-tests`, { pump: 'M1', runs, note }, status);
const open = async () => (await get<{ handover: Handover | null; open: { code: string; params: Record<string, string | number> }[] }>(ours.owner.agent, `/jobs/${job.id}/handover`)).open;
const body = { asBuilt: [{ part: 'B1', field: 'onLevel', level: basin.onLevel + 0.004 }, { part: 'P1', field: 'invertUp', level: 30 }], pumpSerial: 'A-17', breaker: '14', deviations: '', customerName: 'Marisol Pruett', warrantyYears: 2 };

/** Proven; of the contract also that its time to cancel was waived by hand. */
const isDone = (state: string): boolean => state === 'proven' || state === 'notApplicable';

/** One round of the work: whoever may prove an open item does; the keys that could not be. */
async function round(template: (id: string) => boolean): Promise<string[]> {
  const list: Checklist = await crew.checklist();
  for (const item of list.items) {
    if (!template(item.template) || isDone(item.state) || item.heldBy.length > 0) continue;
    const byOffice = item.requirement.signers.includes('owner') && !item.requirement.signers.includes('crewLead');
    await (byOffice ? office : crew).prove(item.key);
  }
  return (await crew.checklist()).items.filter((item) => template(item.template) && !isDone(item.state)).map(({ key }) => key);
}

async function workThrough(template: (id: string) => boolean): Promise<string[]> {
  let before = Infinity;
  for (let left = await round(template); ; left = await round(template)) {
    if (left.length === 0 || left.length >= before) return left;
    before = left.length;
  }
}

describe('the proof', () => {
  it('waits for the electrician: HP-12 guards the pump-down', async () => {
    const refused = await ours.crew.agent.post(`/api/v1/jobs/${job.id}/proof-tests`).set('Idempotency-Key', 'a-key-of-its-own-1').send({ pump: 'M1', runs: [run(1)], note: '' }).expect(409);
    expect(refused.body).toMatchObject({ code: 'checklist.held', params: { holdPoint: 'HP-12', missing: 'H1' } });
    await crew.prove('H1');
  });

  it('judges three runs against the duty at that level, keeps the readings hashed, and holds the job until they pass', async () => {
    const failed = await record([run(0.7), run(0.72), run(0.71)]);
    expect(failed).toMatchObject({ verdict: 'fail', pump: 'M1', recordedBy: 'Test crew' });
    expect(failed.predictedFlow).toBeCloseTo(predicted, 12);
    expect(failed.difference).toBeCloseTo(-0.29, 2);
    expect((await get<Job>(ours.owner.agent, `/jobs/${job.id}`)).holds).toMatchObject([{ waitsFor: 'proof', code: 'proof.hold.fail' }]);
    expect((await record([run(1), run(1.01)])).verdict).toBe('repeat');
    expect((await record([run(0.86), run(0.86), run(0.86)])).verdict).toBe('explain');
    const passed = await record([run(0.3, true), run(0.98), run(0.99), run(1)]);
    expect(passed.verdict).toBe('pass');
    expect(passed.difference).toBeCloseTo((0.98 + 0.99 + 1) / 3 - 1, 9);
    const stored = await test.owner.query<{ content: Buffer }>('SELECT content FROM proof_test WHERE id = $1', [passed.id]);
    expect(await sha256Hex(new Uint8Array(stored.rows[0]?.content ?? []))).toBe(passed.sha256);
    const after = await get<Job>(ours.owner.agent, `/jobs/${job.id}`);
    expect([after.stage, after.holds]).toEqual(['proving', []]);
    expect((await crew.item('J1:M1')).facts.map(({ fact, verdict }) => [fact.kind, 'reference' in fact ? fact.reference : '', verdict])).toEqual([['document', passed.id, 'kept']]);
    expect((await get<{ items: ProofTest[] }>(ours.crew.agent, `/jobs/${job.id}/proof-tests`)).items.map(({ verdict }) => verdict)).toEqual(['pass', 'explain', 'repeat', 'fail']);
  });

  it('takes no other document for the pump-down, and no readings that cannot be', async () => {
    const { facts } = await crew.send([crew.fact(await crew.item('J1:M1'), { kind: 'document', reference: 'trust me', validOn: null })]);
    expect(facts[0]).toMatchObject({ verdict: 'refused', reason: 'noSuchProof' });
    const invalid = (runs: object[]) => ours.crew.agent.post(`/api/v1/jobs/${job.id}/proof-tests`).set('Idempotency-Key', `key-${String(Math.random())}-long-enough`).send({ pump: 'M1', runs, note: '' });
    expect((await invalid([{ ...run(1), upperLevel: lowerLevel, lowerLevel: upperLevel }]).expect(422)).body).toMatchObject({ code: 'proof.invalid', issues: [{ path: 'body.runs.0' }] });
    expect((await invalid([run(1, true)]).expect(422)).body.params.reason).toBe('noRuns');
    await invalid([]).expect(400);
    await post(theirs.owner.agent, `/jobs/${job.id}/proof-tests`, { pump: 'M1', runs: [run(1)], note: '' }, 404);
    const unbuilt = await newJob(ours);
    await post(ours.owner.agent, `/jobs/${unbuilt.id}/proof-tests`, { pump: 'M1', runs: [run(1)], note: '' }, 409);
  });
});

describe('the handover', () => {
  it('names what is open and refuses until nothing is', async () => {
    const { items: steps } = await crew.checklist();
    const told = (await open()).map(({ code, params }) => `${code} ${String(params['holdPoint'] ?? '')} ${String(params['item'] ?? '')}`.trim());
    // The electrician has signed H1 and nothing else was done: every other step of the list is named.
    expect(told).toHaveLength(steps.length - 1);
    expect(told).toEqual(expect.arrayContaining(['handover.open.item HP-1 A2', 'handover.open.item HP-7 E5:P1', 'handover.open.item HP-14 J1:M1', 'handover.open.item HP-15 J7', 'handover.open.step  B1', 'handover.open.step  J8']));
    await post(ours.owner.agent, `/jobs/${job.id}/found`, { kind: 'soil', part: null, measure: null, note: 'soft', photoIds: [] }, 201);
    expect((await open()).at(-1)).toEqual({ code: 'handover.open.found', params: { count: 1 } });
    const refused = await ours.owner.agent.post(`/api/v1/jobs/${job.id}/handover`).set('Idempotency-Key', 'a-key-of-its-own-2').send(body).expect(409);
    expect(refused.body).toMatchObject({ code: 'handover.notReady', params: { open: steps.length } });
    expect(refused.body.issues[0].message).toBe('HP-1: A2 is not proven');
    const { items } = (await ours.owner.agent.get(`/api/v1/jobs/${job.id}/found`)).body as { items: { id: string }[] };
    await post(ours.owner.agent, `/jobs/${job.id}/found/${items[0]?.id ?? ''}/answer`, { answer: 'stone under it' }, 200);
  });

  it('is refused when only its own last steps are proven, whatever else was left out, and the job is not at work by them', async () => {
    const other = (await releasedJob(test, ours)).job;
    const last = await Phone.of(test, ours.crew, other.id);
    for (const itemKey of ['J4', 'J7']) expect((await last.prove(itemKey)).map(({ verdict }) => verdict)).not.toContain('refused');
    await post(ours.owner.agent, `/jobs/${other.id}/checklist/J1%3AM1/waive`, { reason: 'agreed with the customer' }, 200);
    for (const itemKey of ['J8', 'J9']) await last.prove(itemKey);
    const refused = await ours.owner.agent.post(`/api/v1/jobs/${other.id}/handover`).set('Idempotency-Key', 'a-key-of-its-own-3').send(body).expect(409);
    const named = (refused.body.issues as { message: string }[]).map(({ message }) => message);
    expect(named).toEqual(expect.arrayContaining(['HP-1: A2 is not proven', 'HP-6: E1:P1 is not proven', 'B1 is neither proven nor said not to apply']));
    expect((await get<Job>(ours.owner.agent, `/jobs/${other.id}`)).stage).toBe('released');
  }, 180_000);

  it("is refused while one tape of one buried part lacks, by the crew's own list and by the office", async () => {
    const other = (await releasedJob(test, ours)).job;
    const phone = await Phone.of(test, ours.crew, other.id);
    const facts = (await phone.all('J7')).filter((fact) => fact.kind !== 'measured' || fact.name !== 'tieTwo:N1');
    await phone.send(facts);
    expect(await phone.item('J7')).toMatchObject({ state: 'started', missing: ['value:tieTwo:N1'] });
    expect((await phone.checklist()).holdPoints.find(({ id }) => id === 'HP-15')?.open).toBe(false);
    const refused = await ours.owner.agent.post(`/api/v1/jobs/${other.id}/handover`).set('Idempotency-Key', 'a-key-of-its-own-4').send(body).expect(409);
    expect((refused.body.issues as { message: string }[]).map(({ message }) => message)).toContain('HP-15: J7 is not proven');
    const item = await phone.item('J7');
    await phone.send([phone.fact(item, { kind: 'measured', name: 'tieTwo:N1', value: 3.2 })]);
    expect((await phone.item('J7')).state).toBe('proven');
  }, 180_000);

  it("the homeowner's lines stand in the office as they were answered on the crew's phone, and what is no answer is refused", async () => {
    const other = (await releasedJob(test, ours)).job;
    const phone = await Phone.of(test, ours.crew, other.id);
    const item = await phone.item('A3');
    const told = await phone.send([phone.fact(item, { kind: 'written', name: 'line:septic', text: 'yes' }), phone.fact(item, { kind: 'written', name: 'line:pool', text: 'perhaps' })]);
    expect(told.facts.map(({ verdict }) => verdict)).toEqual(['kept', 'refused']);
    // A line that is there is a step of its own at once.
    expect(told.checklist.items.filter(({ template }) => template === 'C3').some(({ partName, requirement }) => partName !== null || requirement.params['line'] !== undefined)).toBe(true);
    const { lines } = await get<PrivateLines>(ours.owner.agent, `/jobs/${other.id}/private-lines`);
    expect(lines.find(({ question }) => question === 'septic')).toMatchObject({ state: 'yes', by: 'Test crew' });
    expect(lines.find(({ question }) => question === 'pool')).toMatchObject({ state: 'unknown', by: '' });
    await post(ours.owner.agent, `/jobs/${other.id}/private-lines`, { lines: [{ question: 'septic', state: 'no', note: 'on the city sewer', on: null, photoId: null }] }, 200);
    // A phone that comes in late does not take back what the office heard after it.
    const late = phone.fact(item, { kind: 'written', name: 'line:septic', text: 'unknown' }, { deviceTime: '2026-03-02T00:00:00.000Z' });
    await phone.send([late]);
    expect((await get<PrivateLines>(ours.owner.agent, `/jobs/${other.id}/private-lines`)).lines.find(({ question }) => question === 'septic')?.state).toBe('no');
  }, 180_000);

  it('every item of the job can be proven in the order that the hold points allow', async () => {
    expect(await workThrough((id) => !id.startsWith('J'))).toEqual([]);
    expect(await workThrough((id) => id.startsWith('J'))).toEqual([]);
    const { holdPoints } = await crew.checklist();
    expect(holdPoints.filter((point) => !point.open)).toEqual([]);
    expect(await open()).toEqual([]);
  }, 240_000);

  it('compares the levels as built, starts the warranty on the day of the property, hashes the record and ends the job', async () => {
    await post(ours.crew.agent, `/jobs/${job.id}/handover`, body, 403);
    await post(theirs.owner.agent, `/jobs/${job.id}/handover`, body, 404);
    await post(ours.owner.agent, `/jobs/${job.id}/handover`, { ...body, asBuilt: [{ part: 'B1', field: 'diameter', level: 1 }] }, 400);
    // Half past ten in the evening in New York is the next day in UTC.
    test.clock.set('2026-03-05T03:30:00Z');
    const done = await post<Handover>(ours.owner.agent, `/jobs/${job.id}/handover`, body, 201);
    expect(done).toMatchObject({ warrantyFrom: '2026-03-04', warrantyUntil: '2028-03-04', pumpSerial: 'A-17', customerName: 'Marisol Pruett', by: 'Test owner' });
    expect(done.asBuilt[0]).toMatchObject({ part: 'B1', field: 'onLevel', designed: basin.onLevel });
    expect(done.asBuilt[0]?.difference).toBeCloseTo(0.004, 12);
    expect(done.ties?.from).toEqual(['A-17', 'A-17']);
    expect(done.ties?.parts.map(({ part }) => part)).toEqual(['B1', 'N1', 'O1', 'O2', 'P1', 'R1']);
    for (const part of done.ties?.parts ?? []) expect([part.level, part.one, part.two].every((figure) => figure !== null), part.part).toBe(true);
    const stored = await test.owner.query<{ content: Buffer }>('SELECT content FROM handover WHERE job_id = $1', [job.id]);
    const bytes = new Uint8Array(stored.rows[0]?.content ?? []);
    expect(await sha256Hex(bytes)).toBe(done.sha256);
    expect(canonicalBytes(JSON.parse(Buffer.from(bytes).toString('utf8')))).toEqual(bytes);
    expect((await get<Job>(ours.owner.agent, `/jobs/${job.id}`)).stage).toBe('handedOver');
    await post(ours.owner.agent, `/jobs/${job.id}/handover`, body, 409);
    expect((await get<{ handover: Handover }>(ours.crew.agent, `/jobs/${job.id}/handover`)).handover).toEqual(done);
  });
});
