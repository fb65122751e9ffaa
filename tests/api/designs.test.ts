import { randomUUID } from 'node:crypto';
import type { Design, DraftOperation, Revision } from '@yardfall/contracts';
import { canonicalBytes, sha256Hex } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { key, makeCompany, makePerson, type Person, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { acknowledgeAll, draftRevision, get, issue, newJob, post, siteDocument } from '../support/builders.ts';

let test: TestApp;
let ours: TestCompany;
let second: Person;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  second = await makePerson(test, ours.id, ['estimator']);
});
afterAll(() => test.close());

const urlOf = (revision: Revision) => `/jobs/${revision.jobId}/revisions/${revision.id}`;
const setFall = (value: number): DraftOperation => ({ kind: 'replace', path: ['system', 'parts', '@P1', 'invertDown'], value });
const rename = (part: string, name: string): DraftOperation => ({ kind: 'replace', path: ['system', 'parts', `@${part}`, 'name'], value: name });
const operate = (agent: Person['agent'], revision: Revision, base: number, operations: DraftOperation[]) =>
  agent.post(`/api/v1${urlOf(revision)}/operations`).set(key()).send({ base, operations });

describe('a draft', () => {
  it('holds its document as canonical bytes with their hash, and what the engine made of it', async () => {
    const { revision } = await draftRevision(ours);
    expect(revision.documentSha256).toBe(await sha256Hex(canonicalBytes(revision.document)));
    expect(revision).toMatchObject({ number: 1, status: 'draft', version: 1, stopCount: 0, provisional: false, isBuildRevision: false });
    expect(revision.evaluation?.results.freeboards.length).toBe(4);
    const { rows } = await test.owner.query<{ document: Buffer; evaluation: Buffer; evaluation_sha256: string }>('SELECT document, evaluation, evaluation_sha256 FROM revision WHERE id = $1', [revision.id]);
    expect(await sha256Hex(new Uint8Array(rows[0]?.document ?? []))).toBe(revision.documentSha256);
    expect(await sha256Hex(new Uint8Array(rows[0]?.evaluation ?? []))).toBe(rows[0]?.evaluation_sha256);
  });

  it('takes the edits of two people on different parts, and gives the same part back to choose', async () => {
    const { revision } = await draftRevision(ours);
    const first = await operate(ours.estimator.agent, revision, 1, [rename('CH1', 'Channel at the door')]).expect(200);
    expect(first.body).toMatchObject({ version: 2 });
    const other = await operate(second.agent, revision, 1, [rename('P1', 'Pipe to the pit')]).expect(200);
    expect(other.body.version).toBe(3);
    const clash = await operate(second.agent, revision, 1, [rename('CH1', 'Trench')]).expect(409);
    expect(clash.body).toMatchObject({ code: 'draft.conflict', params: { part: 'system.parts.@CH1', path: 'system.parts.@CH1.name', by: 'Test estimator', theirs: '"Channel at the door"', removed: false } });
    const after = await get<Revision>(ours.estimator.agent, urlOf(revision));
    expect(after.document.system.parts.filter(({ id }) => id === 'CH1' || id === 'P1').map(({ name }) => name)).toEqual(['Channel at the door', 'Pipe to the pit']);
    const log = await test.owner.query<{ seq: number; part: string }>('SELECT seq, part FROM draft_operation WHERE revision_id = $1 ORDER BY seq', [revision.id]);
    expect(log.rows).toEqual([{ seq: 2, part: 'system.parts.@CH1' }, { seq: 3, part: 'system.parts.@P1' }]);
  });

  it('loses no edit of two people who save at the same moment', async () => {
    const { revision } = await draftRevision(ours);
    const [one, two] = await Promise.all([operate(ours.estimator.agent, revision, 1, [rename('CH1', 'One')]), operate(second.agent, revision, 1, [rename('P1', 'Two')])]);
    expect([one.status, two.status]).toEqual([200, 200]);
    const after = await get<Revision>(ours.estimator.agent, urlOf(revision));
    expect(after.version).toBe(3);
    expect(after.document.system.parts.filter(({ id }) => id === 'CH1' || id === 'P1').map(({ name }) => name)).toEqual(['One', 'Two']);
  });

  it.each([
    ['a part that is not there', [rename('P9', 'x')], 'system.parts.@P9'],
    ['a value of the wrong kind', [{ kind: 'replace', path: ['system', 'parts', '@P1', 'length'], value: 'long' }], 'system.parts'],
  ] as const)('refuses %s by its path and changes nothing', async (_, operations, place) => {
    const { revision } = await draftRevision(ours);
    const refused = await operate(ours.estimator.agent, revision, 1, operations as unknown as DraftOperation[]).expect(422);
    expect(refused.body.code).toBe('document.invalid');
    expect(refused.body.issues[0].path).toContain(place);
    expect(await get<Revision>(ours.estimator.agent, urlOf(revision))).toEqual(revision);
  });

  it('what cannot be computed yet is kept without numbers, cannot be issued, and has its numbers again when it is mended', async () => {
    const { revision } = await draftRevision(ours);
    const whole = revision.document.system.parts.find(({ id }) => id === 'P1')?.drainsTo ?? null;
    const broken = (await operate(ours.estimator.agent, revision, 1, [{ kind: 'connect', part: 'P1', drainsTo: 'P1' }]).expect(200)).body as Revision;
    expect(broken).toMatchObject({ version: 2, evaluation: null, evaluationSha256: null, calcVersion: null });
    const refused = await ours.estimator.agent.post(`/api/v1${urlOf(broken)}/issue`).set(key()).set('If-Match', '"2"').send({}).expect(422);
    expect(refused.body.code).toBe('document.invalid');
    expect(refused.body.issues[0].path).toContain('/system/parts');
    const mended = (await operate(ours.estimator.agent, broken, 2, [{ kind: 'connect', part: 'P1', drainsTo: whole }]).expect(200)).body as Revision;
    expect(mended.evaluationSha256).toBe(revision.evaluationSha256);
  });

  it('a pipe that climbs is a stop, and the design stays a draft', async () => {
    const { revision } = await draftRevision(ours);
    const edited = (await operate(ours.estimator.agent, revision, 1, [setFall(30.23)]).expect(200)).body as Revision;
    expect(edited.stopCount).toBeGreaterThan(0);
    const refused = await ours.estimator.agent.post(`/api/v1${urlOf(edited)}/issue`).set(key()).set('If-Match', `"${String(edited.version)}"`).send({}).expect(409);
    expect(refused.body.code).toBe('design.stopFindings');
    expect((await get<Revision>(ours.estimator.agent, urlOf(revision))).status).toBe('draft');
  });
});

describe('issuing', () => {
  it('wants each caution accepted by name, then freezes what was evaluated', async () => {
    const { job, revision } = await draftRevision(ours);
    expect(revision.cautionCount).toBeGreaterThan(0);
    const refused = await ours.estimator.agent.post(`/api/v1${urlOf(revision)}/issue`).set(key()).set('If-Match', '"1"').send({}).expect(409);
    expect(refused.body).toMatchObject({ code: 'design.unacknowledged' });
    await ours.estimator.agent.post(`/api/v1${urlOf(revision)}/acknowledgements`).set(key()).send({ code: 'No.such', at: null, note: '' }).expect(404);
    const accepted = await acknowledgeAll(ours.estimator.agent, revision);
    expect(accepted.acknowledgements).toHaveLength(revision.cautionCount);
    expect(accepted.acknowledgements[0]).toMatchObject({ by: 'Test estimator', note: 'seen' });
    const issued = await issue(ours.estimator.agent, accepted);
    expect(issued).toMatchObject({ status: 'issued', issuedBy: 'Test estimator', documentSha256: revision.documentSha256, evaluationSha256: revision.evaluationSha256 });
    const edit = await operate(ours.estimator.agent, issued, issued.version, [rename('P1', 'Late')]).expect(409);
    expect(edit.body.code).toBe('design.notDraft');
    // Nor is its plan drawn on any more, nor a caution accepted after the fact.
    const shape: DraftOperation = { kind: 'replace', path: ['site', 'plan'], value: { picture: null, north: 0, shapes: [] } };
    expect((await operate(ours.estimator.agent, issued, issued.version, [shape]).expect(409)).body.code).toBe('design.notDraft');
    const late = accepted.acknowledgements[0];
    const after = await ours.estimator.agent.post(`/api/v1${urlOf(revision)}/acknowledgements`).set(key()).send({ code: late?.code, at: late?.at, note: 'late' }).expect(409);
    expect(after.body.code).toBe('design.notDraft');
    expect((await get<Revision>(ours.owner.agent, urlOf(revision))).acknowledgements).toEqual(accepted.acknowledgements);
    await expect(test.owner.query(`UPDATE revision SET stop_count = 9 WHERE id = $1`, [issued.id])).rejects.toMatchObject({ code: 'YF001' });
    expect((await get<{ stage: string }>(ours.owner.agent, `/jobs/${job.id}`)).stage).toBe('pricing');
  });

  it('wants the version that was read', async () => {
    const { revision } = await draftRevision(ours);
    await ours.estimator.agent.post(`/api/v1${urlOf(revision)}/issue`).set(key()).send({}).expect(428);
    await ours.estimator.agent.post(`/api/v1${urlOf(revision)}/issue`).set(key()).set('If-Match', '"7"').send({}).expect(412);
    await ours.crew.agent.post(`/api/v1${urlOf(revision)}/issue`).set(key()).set('If-Match', '"1"').send({}).expect(403);
    expect(await get<Revision>(ours.estimator.agent, urlOf(revision))).toEqual(revision);
  });

  it('supersedes within its variant only', async () => {
    const { job, revision } = await draftRevision(ours);
    const first = await issue(ours.estimator.agent, await acknowledgeAll(ours.estimator.agent, revision));
    const other = await post<Revision>(ours.estimator.agent, `/jobs/${job.id}/designs`, { name: 'Second', document: null, fromRevisionId: first.id }, 201);
    await issue(ours.estimator.agent, await acknowledgeAll(ours.estimator.agent, other));
    const next = await post<Revision>(ours.estimator.agent, `/jobs/${job.id}/designs/${first.designId}/revisions`, { fromRevisionId: first.id }, 201);
    expect(next).toMatchObject({ number: 2, status: 'draft', acknowledgements: [] });
    await ours.estimator.agent.post(`/api/v1/jobs/${job.id}/designs/${first.designId}/revisions`).set(key()).send({ fromRevisionId: first.id }).expect(409);
    await issue(ours.estimator.agent, await acknowledgeAll(ours.estimator.agent, next));
    const { items } = await get<{ items: Design[] }>(ours.owner.agent, `/jobs/${job.id}/designs`);
    expect(items.map(({ name, revisions }) => [name, revisions.map(({ number, status }) => `${String(number)} ${status}`)])).toEqual([['First', ['2 issued', '1 superseded']], ['Second', ['1 issued']]]);
  });

  it('an unanswered outlet question leaves the design provisional', async () => {
    const { revision } = await draftRevision(ours, siteDocument('ridgeback'));
    const issued = await issue(ours.estimator.agent, await acknowledgeAll(ours.estimator.agent, revision));
    expect(issued).toMatchObject({ status: 'issued', provisional: true });
    const { items } = await get<{ items: Design[] }>(ours.owner.agent, `/jobs/${revision.jobId}/designs`);
    expect(items.flatMap(({ revisions }) => revisions.map(({ status, provisional }) => `${status} ${String(provisional)}`))).toEqual(['issued true']);
  });

  it('a site that needs an engineer is not issued', async () => {
    const { revision } = await draftRevision(ours, siteDocument('sallow-bend'));
    const accepted = await acknowledgeAll(ours.estimator.agent, revision);
    const refused = await ours.estimator.agent.post(`/api/v1${urlOf(revision)}/issue`).set(key()).set('If-Match', `"${String(accepted.version)}"`).send({}).expect(409);
    expect(refused.body.code).toBe('design.referred');
  });
});

it('a design begins from the levels and rain of the job, and says what is missing', async () => {
  const job = await newJob(ours);
  const start = { name: 'From the job', document: null, fromRevisionId: null };
  const refused = await ours.estimator.agent.post(`/api/v1/jobs/${job.id}/designs`).set(key()).send(start).expect(422);
  expect(refused.body).toMatchObject({ code: 'document.invalid', issues: [{ path: 'rain' }] });
  const table = await post<{ id: string; sha256: string }>(ours.estimator.agent, `/jobs/${job.id}/rain-tables`, { name: 'Typed', table: siteDocument('tern-hollow').rain.table }, 201);
  const made = await post<Revision>(ours.estimator.agent, `/jobs/${job.id}/designs`, start, 201);
  expect(made.document.sources).toMatchObject({ survey: null, rain: { id: table.id, sha256: table.sha256 } });
  await ours.estimator.agent.post(`/api/v1/jobs/${job.id}/designs`).set(key()).send(start).expect(409);
  await ours.estimator.agent.post(`/api/v1/jobs/${job.id}/designs`).set(key()).send({ ...start, name: 'x', fromRevisionId: randomUUID() }).expect(404);
});
