import { randomUUID } from 'node:crypto';
import { type DigVerdict, proposedEdit, type FoundReport, type Job, type LocateTicket, type Photo, type Problem, type Revision } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { acknowledgeAll, get, issue, newJob, post, releasedJob, type WithOffer } from '../support/builders.ts';
import { mayDig, Phone, picture, sendPhoto } from '../support/work.ts';

let test: TestApp;
let ours: TestCompany;
let theirs: TestCompany;
let job: Job;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  theirs = await makeCompany(test, 'Other Yards');
  job = await newJob(ours);
  await ours.owner.agent.put(`/api/v1/jobs/${job.id}/assignments`).set(key()).send({ assignments: [{ memberId: ours.crew.id, role: 'crew' }] }).expect(200);
}, 120_000);
afterAll(() => test.close());

const thick = { kind: 'thickerSlab', part: 'CH1', measure: 0.216, note: 'Eight and a half inches at the second hole', photoIds: [] as string[] };
const holds = async () => (await get<Job>(ours.owner.agent, `/jobs/${job.id}`)).holds.filter(({ code }) => code.startsWith('found.')).map(({ code, params, waitsFor }) => ({ code, params, waitsFor }));

const hold = (kind: string, { id }: FoundReport) => ({ code: 'found.hold.open', waitsFor: 'us', params: { kind: `found.kind.${kind}`, report: id } });

describe('"stop work: we found ..."', () => {
  it('holds the job until the estimator has answered every report', async () => {
    const photo = (await sendPhoto(ours.crew.agent, job.id, await picture()).expect(201)).body as Photo;
    const slab = await post<FoundReport>(ours.crew.agent, `/jobs/${job.id}/found`, { ...thick, photoIds: [photo.id] }, 201);
    expect(slab).toMatchObject({ ...thick, photoIds: [photo.id], status: 'open', reportedBy: 'Test crew', answer: null });
    test.clock.forward(60);
    const pipe = await post<FoundReport>(ours.crew.agent, `/jobs/${job.id}/found`, { ...thick, kind: 'pipeInTheWay', measure: null }, 201);
    expect(await holds()).toEqual([hold('thickerSlab', slab), hold('pipeInTheWay', pipe)]);
    const answered = await post<FoundReport>(ours.estimator.agent, `/jobs/${job.id}/found/${slab.id}/answer`, { answer: 'Breaker comes at ten' }, 200);
    expect(answered).toMatchObject({ status: 'answered', answer: 'Breaker comes at ten', answeredBy: 'Test estimator' });
    expect(await holds()).toEqual([hold('pipeInTheWay', pipe)]);
    await post(ours.estimator.agent, `/jobs/${job.id}/found/${slab.id}/answer`, { answer: 'again' }, 409);
    await post(ours.estimator.agent, `/jobs/${job.id}/found/${pipe.id}/answer`, { answer: 'Cut and cap' }, 200);
    expect(await holds()).toEqual([]);
    expect((await get<{ items: FoundReport[] }>(ours.crew.agent, `/jobs/${job.id}/found`)).items.map(({ id }) => id)).toEqual([pipe.id, slab.id]);
  });

  it('is not answered by the crew, nor across companies, nor with a photo of elsewhere', async () => {
    const report = await post<FoundReport>(ours.crew.agent, `/jobs/${job.id}/found`, thick, 201);
    await post(ours.crew.agent, `/jobs/${job.id}/found/${report.id}/answer`, { answer: 'go on' }, 403);
    await post(theirs.owner.agent, `/jobs/${job.id}/found/${report.id}/answer`, { answer: 'go on' }, 404);
    await post(theirs.owner.agent, `/jobs/${job.id}/found`, thick, 404);
    await post(ours.crew.agent, `/jobs/${job.id}/found`, { ...thick, photoIds: [randomUUID()] }, 404);
    await post(ours.crew.agent, `/jobs/${job.id}/found`, { ...thick, kind: 'gold' }, 400);
    expect((await get<{ items: FoundReport[] }>(ours.owner.agent, `/jobs/${job.id}/found`)).items.filter(({ status }) => status === 'open')).toHaveLength(1);
  });
});

describe('a report that is on record from the second tap', () => {
  let url: string;
  const told = { kind: 'utility', part: null, measure: null, note: '', photoIds: [], hit: null };
  const added = () => ({ ...told, id: randomUUID(), at: test.clock.now().toISOString(), kind: null as string | null });
  const mine = async (id: string) => (await get<{ items: FoundReport[] }>(ours.crew.agent, url)).items.find((one) => one.id === id);

  beforeAll(async () => {
    const own = await newJob(ours);
    await ours.owner.agent.put(`/api/v1/jobs/${own.id}/assignments`).set(key()).send({ assignments: [{ memberId: ours.crew.id, role: 'crew' }] }).expect(200);
    url = `/jobs/${own.id}/found`;
  });

  it('stops since the phone says so, and is one report however often it arrives', async () => {
    const stoppedAt = test.clock.now().toISOString();
    test.clock.forward(40 * 60);
    const report = { ...told, id: randomUUID(), at: stoppedAt };
    for (let sent = 0; sent < 3; sent += 1) expect(await post<FoundReport>(ours.crew.agent, url, report, 201)).toMatchObject({ id: report.id, stoppedAt, note: '', reportedById: ours.crew.id });
    expect((await get<{ items: FoundReport[] }>(ours.crew.agent, url)).items).toHaveLength(1);
    const [held] = (await get<Job>(ours.owner.agent, url.replace('/found', ''))).holds.filter(({ code }) => code === 'found.hold.open');
    expect(held?.since).toBe(stoppedAt);
    await post(ours.estimator.agent, url, report, 409);
    const ahead = await post<FoundReport>(ours.crew.agent, url, { ...told, id: randomUUID(), at: new Date(test.clock.now().getTime() + 3_600_000).toISOString() }, 201);
    expect(ahead.stoppedAt).toBe(ahead.reportedAt);
  });

  it('is added to by who reported it, also after the answer; nothing of it is overwritten', async () => {
    const { id } = await post<FoundReport>(ours.crew.agent, url, { ...told, id: randomUUID(), at: test.clock.now().toISOString() }, 201);
    const photo = (await sendPhoto(ours.crew.agent, url.split('/')[2] ?? '', await picture()).expect(201)).body as Photo;
    test.clock.forward(60);
    const measure = { ...added(), measure: 0.4 };
    for (let sent = 0; sent < 2; sent += 1) await post(ours.crew.agent, `${url}/${id}/additions`, measure, 200);
    test.clock.forward(60);
    await post(ours.crew.agent, `${url}/${id}/additions`, { ...added(), photoIds: [photo.id], part: 'P1', kind: 'pipeInTheWay' }, 200);
    await post(ours.estimator.agent, `${url}/${id}/answer`, { answer: 'Cap it' }, 200);
    test.clock.forward(60);
    await post(ours.crew.agent, `${url}/${id}/additions`, { ...added(), note: 'It was dry' }, 200);
    const now = await mine(id);
    expect(now).toMatchObject({ kind: 'pipeInTheWay', measure: 0.4, part: 'P1', note: 'It was dry', photoIds: [photo.id], status: 'answered' });
    expect(now?.additions.map(({ measure: m, part, by }) => [m, part, by])).toEqual([[0.4, null, 'Test crew'], [null, 'P1', 'Test crew'], [null, null, 'Test crew']]);

    await post(ours.estimator.agent, `${url}/${id}/additions`, added(), 404);
    await post(ours.crew.agent, `${url}/${id}/additions`, { ...added(), photoIds: [randomUUID()] }, 404);
    const other = await post<FoundReport>(ours.crew.agent, url, { ...told, id: randomUUID(), at: test.clock.now().toISOString() }, 201);
    await post(ours.crew.agent, `${url}/${other.id}/additions`, measure, 409);
    expect((await mine(id))?.additions).toHaveLength(3);
  });
});

describe('work that was stopped', () => {
  let released: WithOffer;
  let phone: Phone;
  const begin = (step: string) => ours.crew.agent.post(`/api/v1/jobs/${released.job.id}/checklist/${step}/begin`).set(key()).send({});
  const may = async () => (await get<{ verdict: DigVerdict }>(ours.crew.agent, `/jobs/${released.job.id}/locate-tickets`)).verdict;
  const soft = { kind: 'soil', part: null, measure: null, note: '', photoIds: [] };

  beforeAll(async () => {
    released = await releasedJob(test, ours);
    await mayDig(ours.crew.agent, released.job.id);
    phone = await Phone.of(test, ours.crew, released.job.id);
  }, 120_000);

  it('does not begin before the answer, neither at the office nor by what a phone kept; all else of the step is recorded', async () => {
    await phone.prove('A2');
    const c5 = (await phone.checklist()).items.find(({ template }) => template === 'C5');
    if (c5 === undefined) throw new Error('the list has no C5');
    await begin(c5.key).expect(200);
    const c7 = (await phone.checklist()).items.find(({ template }) => template === 'C7') ?? c5;
    const before = phone.fact(c5, { kind: 'begun' });
    test.clock.forward(60);
    const report = await post<FoundReport>(ours.crew.agent, `/jobs/${released.job.id}/found`, soft, 201);
    test.clock.forward(60);
    expect((await begin(c5.key).expect(409)).body).toMatchObject({ code: 'checklist.stopped' });
    const { facts } = await phone.send([before, phone.fact(c5, { kind: 'begun' }), phone.fact(c5, { kind: 'ticked', note: '' }), phone.fact(c7, { kind: 'failed', reason: 'water' })]);
    expect(facts.map(({ fact, verdict, reason }) => `${fact.kind} ${verdict} ${reason ?? ''}`.trim())).toEqual(['begun kept', 'begun refused stopped', 'ticked kept', 'failed kept']);
    await post(ours.estimator.agent, `/jobs/${released.job.id}/found/${report.id}/answer`, { answer: 'Stone under it' }, 200);
    await begin(c5.key).expect(200);
  });

  it('by a line that was hit is not dug at under any ticket, once, until its owner clears it', async () => {
    expect((await may()).mayDig).toBe(true);
    const id = randomUUID();
    const at = test.clock.now().toISOString();
    await post(ours.crew.agent, `/jobs/${released.job.id}/found`, { ...soft, id, at, kind: 'utility' }, 201);
    expect((await may()).mayDig, 'seen and not hit').toBe(true);
    test.clock.forward(60);
    const hitAt = test.clock.now().toISOString();
    test.clock.forward(60);
    const hit = { kind: null, part: null, measure: null, note: '', photoIds: [] };
    await post(ours.crew.agent, `/jobs/${released.job.id}/found/${id}/additions`, { ...hit, id: randomUUID(), at: hitAt, hit: 'danger' }, 200);
    await post(ours.crew.agent, `/jobs/${released.job.id}/found/${id}/additions`, { ...hit, id: randomUUID(), at: hitAt, hit: 'line' }, 200);
    expect((await may()).reasons.map(({ code, params }) => [code, params.at])).toEqual([['locates.reason.damage', hitAt]]);
    const { items } = await get<{ items: LocateTicket[] }>(ours.crew.agent, `/jobs/${released.job.id}/locate-tickets`);
    expect(items.flatMap(({ events }) => events).filter(({ kind }) => kind === 'damage')).toMatchObject([{ at: hitAt, hazard: true }]);
  });
});

describe('a finding as a change of the design', () => {
  let released: WithOffer;
  let at: string;
  const reports = async () => (await get<{ items: FoundReport[] }>(ours.estimator.agent, `${at}/found`)).items;
  const one = async (id: string) => (await reports()).find((report) => report.id === id);

  beforeAll(async () => {
    released = await releasedJob(test, ours);
    at = `/jobs/${released.job.id}`;
  });

  it('opens a draft from the build revision, and changes nothing in it before somebody accepts the edit', async () => {
    const slab = await post<FoundReport>(ours.crew.agent, `${at}/found`, thick, 201);
    expect(slab.draft).toBeNull();
    await post(ours.crew.agent, `${at}/found/${slab.id}/draft`, {}, 403);
    await post(theirs.owner.agent, `${at}/found/${slab.id}/draft`, {}, 404);
    const draft = await post<Revision>(ours.estimator.agent, `${at}/found/${slab.id}/draft`, {}, 201);
    expect(draft).toMatchObject({ status: 'draft', number: released.revision.number + 1, documentSha256: released.revision.documentSha256, designId: released.revision.designId });
    expect(await one(slab.id)).toMatchObject({ status: 'open', draft: { revisionId: draft.id, number: draft.number, status: 'draft', designName: draft.designName } });
    await post(ours.estimator.agent, `${at}/found/${slab.id}/draft`, {}, 409);
    const { rows } = await test.owner.query<{ action: string }>("SELECT action FROM audit_entry WHERE job_id = $1 AND action LIKE 'found.%' ORDER BY id", [released.job.id]);
    expect(rows.map(({ action }) => action)).toEqual(['found.reported', 'found.drafted']);
  });

  it('joins the draft that another finding has opened, and both are answered when it is issued', async () => {
    const [slab] = await reports();
    if (slab?.draft == null) throw new Error('the first finding has its draft');
    const pipe = await post<FoundReport>(ours.crew.agent, `${at}/found`, { ...thick, kind: 'pipeInTheWay', measure: 0.12 }, 201);
    const joined = await post<Revision>(ours.owner.agent, `${at}/found/${pipe.id}/draft`, {}, 201);
    expect(joined.id).toBe(slab.draft.revisionId);

    const accepted = [slab, pipe].flatMap((report) => proposedEdit(joined.document as never, report, 'A pipe in the way') ?? []);
    expect(accepted.map(({ kind }) => kind)).toEqual(['replace', 'add']);
    const edited = await post<Revision>(ours.estimator.agent, `${at}/revisions/${joined.id}/operations`, { base: joined.version, operations: accepted }, 200);
    expect(edited.document.construction.slabCuts.find(({ part }) => part === 'CH1')?.thickness).toBe(0.216);
    expect(edited.document.site.utilities.some(({ name }) => name === 'A pipe in the way')).toBe(true);
    expect((await reports()).map(({ status }) => status)).toEqual(['open', 'open']);

    await issue(ours.estimator.agent, await acknowledgeAll(ours.estimator.agent, edited));
    for (const report of await reports()) expect(report).toMatchObject({ status: 'answered', answer: null, answeredBy: 'Test estimator', draft: { status: 'issued' } });
    expect((await get<Job>(ours.owner.agent, at)).holds.filter(({ code }) => code.startsWith('found.'))).toEqual([]);
  });

  it('may still be answered by words, also with a draft; then no draft is opened for it any more', async () => {
    const soil = await post<FoundReport>(ours.crew.agent, `${at}/found`, { ...thick, kind: 'soil', measure: null }, 201);
    const answered = await post<FoundReport>(ours.estimator.agent, `${at}/found/${soil.id}/answer`, { answer: 'Go on' }, 200);
    expect(answered).toMatchObject({ status: 'answered', answer: 'Go on', draft: null });
    await post(ours.estimator.agent, `${at}/found/${soil.id}/draft`, {}, 409);
  });

  it('has no draft before a job was released, nor over a draft that somebody else works at', async () => {
    const early = await post<FoundReport>(ours.owner.agent, `/jobs/${job.id}/found`, thick, 201);
    await post(ours.estimator.agent, `/jobs/${job.id}/found/${early.id}/draft`, {}, 409);
    const late = await post<FoundReport>(ours.crew.agent, `${at}/found`, thick, 201);
    const build = await get<Job>(ours.owner.agent, at);
    const draft = await post<Revision>(ours.estimator.agent, `${at}/designs/${released.revision.designId}/revisions`, { fromRevisionId: build.buildRevisionId ?? '' }, 201);
    const refused = await post<Problem>(ours.owner.agent, `${at}/found/${late.id}/draft`, {}, 409);
    expect(refused).toMatchObject({ code: 'design.draftOpen', params: { by: 'Test estimator', number: draft.number, revisionId: draft.id } });
    // Whoever has it open now is asked before who began it.
    await ours.owner.agent.put(`/api/v1${at}/revisions/${draft.id}/presence`).set(key()).send({ part: null, here: true }).expect(200);
    expect(await post<Problem>(ours.estimator.agent, `${at}/found/${late.id}/draft`, {}, 409)).toMatchObject({ params: { by: 'Test owner' } });
    expect((await one(late.id))?.draft).toBeNull();
  });
});
