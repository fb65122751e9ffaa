import { randomUUID } from 'node:crypto';
import type { DesignDocument, OutletQuestions } from '@yardfall/calc';
import { type Job, outletQuestionIds, outletQuestions, permitKinds, type Permits, type Problem } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { acceptedOffer, get, newJob, noPermitNeeded, post, siteDocument, type WithOffer } from '../support/builders.ts';
import { picture, sendPhoto } from '../support/work.ts';

let test: TestApp;
let ours: TestCompany;
let theirs: TestCompany;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  theirs = await makeCompany(test, 'Other Yards');
}, 120_000);
afterAll(() => test.close());

const answer = { state: 'granted', number: 'B-7', note: '', on: '2026-03-02', expiresOn: null, photoId: null };
type Reasons = { reasons: { code: string; params: Record<string, string> }[] };

/** Tern Hollow with one question about its outlet in the swale left open. */
function withOpen(question: keyof OutletQuestions): DesignDocument {
  const site = siteDocument('tern-hollow');
  return { ...site, system: { parts: site.system.parts.map((part) => (part.kind === 'outlet' && part.id === 'O1' ? { ...part, questions: { ...part.questions, [question]: 'unknown' } } : part)) } };
}

const release = ({ job, offer }: WithOffer) => ours.owner.agent.post(`/api/v1/jobs/${job.id}/release`).set(key()).send({ offerId: offer.id });
async function refusedFor(sold: WithOffer): Promise<string[]> {
  const { body } = await release(sold).expect(409);
  expect((body as Problem).code).toBe('release.held');
  const { reasons } = await get<Reasons>(ours.owner.agent, `/jobs/${sold.job.id}/release?offerId=${sold.offer.id}`);
  expect(reasons.map(({ code }) => code), 'the owner is told the same before').toEqual((body as Problem).issues.map(({ path }) => path));
  expect(await get<Job>(ours.owner.agent, `/jobs/${sold.job.id}`)).toMatchObject({ stage: 'accepted', buildRevisionId: null, releasedAt: null });
  return (body as Problem).issues.map(({ message }) => message);
}

describe('the release to dig, by outlet question', () => {
  // Questions of the outlet gate: any unknown may be priced, not dug.
  it.each(outletQuestionIds.map((id) => [id, outletQuestions[id]] as const))('%s (%s) unknown: sold, not released until it is answered', async (id, question) => {
    const sold = await acceptedOffer(test, ours, withOpen(question));
    await noPermitNeeded(ours.estimator.agent, sold.job.id);
    const [sentence, ...others] = await refusedFor(sold);
    expect(others).toEqual([]);
    expect(sentence).toMatch(new RegExp(`^.+, ${id} ".+": not answered yet\\.$`));
    await post(ours.estimator.agent, `/jobs/${sold.job.id}/permits/outlets`, { revisionId: sold.revision.id, outlet: 'O1', question: id, ...answer }, 200);
    await release(sold).expect(200);
  }, 120_000);

  it('is answered about an issued design and an outlet of it, and a no holds it again', async () => {
    const sold = await acceptedOffer(test, ours, withOpen('permissionHeld'));
    await noPermitNeeded(ours.estimator.agent, sold.job.id);
    const url = `/jobs/${sold.job.id}/permits/outlets`;
    const body = { revisionId: sold.revision.id, outlet: 'O1', question: 'O3', ...answer };
    await post(ours.estimator.agent, url, { ...body, outlet: 'CH1' }, 404);
    await post(ours.estimator.agent, url, { ...body, revisionId: randomUUID() }, 404);
    await post(ours.estimator.agent, url, { ...body, number: '' }, 400);
    await post(ours.crew.agent, url, body, 403);
    await post(theirs.estimator.agent, url, body, 404);
    await post(ours.estimator.agent, url, body, 200);
    await post(ours.estimator.agent, url, { ...body, state: 'refused', note: 'The owner of the swale took it back' }, 200);
    expect(await refusedFor(sold)).toEqual([expect.stringMatching(/, O3 ".+": the answer is no\.$/)]);
  }, 120_000);
});

describe('the release to dig, by permit', () => {
  it('waits for every kind by name, and for each until it is granted or not needed', async () => {
    const sold = await acceptedOffer(test, ours);
    expect(await refusedFor(sold)).toHaveLength(permitKinds.length);
    const holds = async () => (await get<Job>(ours.owner.agent, `/jobs/${sold.job.id}`)).holds.filter(({ waitsFor }) => waitsFor === 'permit').map(({ params }) => params.count);
    expect(await holds()).toEqual([permitKinds.length]);
    await noPermitNeeded(ours.estimator.agent, sold.job.id);
    expect(await holds()).toEqual([]);
    const say = (state: string, more: object = {}) => post<Permits>(ours.estimator.agent, `/jobs/${sold.job.id}/permits`, { answers: [{ kind: 'electrical', ...answer, note: 'by phone', ...more, state }] }, 200);
    for (const [state, why] of [['unknown', 'not answered yet'], ['applied', 'applied for, not granted yet'], ['refused', 'the answer is no']]) {
      await say(String(state));
      expect(await refusedFor(sold), state).toEqual([`Electrical permit: ${String(why)}.`]);
    }
    expect(await holds()).toEqual([1]);
    // Good through the day before, in the time zone of the property.
    await say('granted', { expiresOn: '2026-03-01' });
    expect(await refusedFor(sold)).toEqual(['Electrical permit: it has expired.']);
    await say('granted', { expiresOn: '2026-03-02' });
    await release(sold).expect(200);
  }, 120_000);

  it('takes no answer without what shows it, and keeps every earlier one', async () => {
    const job = await newJob(ours);
    const say = (change: object, status: number) => post<Permits>(ours.estimator.agent, `/jobs/${job.id}/permits`, { answers: [{ kind: 'tree', ...answer, ...change }] }, status);
    await say({ state: 'granted', number: '' }, 400);
    await say({ state: 'granted', on: null }, 400);
    await say({ state: 'notNeeded' }, 400);
    await say({ state: 'applied', number: '', note: 'sent' }, 400);
    await say({ state: 'granted', number: '', photoId: randomUUID() }, 404);
    const photo = (await sendPhoto(ours.estimator.agent, job.id, await picture()).expect(201)).body as { id: string };
    await say({ state: 'applied' }, 200);
    const { permits, outlets, revisionId } = await say({ state: 'granted', number: '', photoId: photo.id }, 200);
    expect(permits.find(({ kind }) => kind === 'tree')).toMatchObject({ gap: null, answer: { state: 'granted', photoId: photo.id, on: '2026-03-02', by: 'Test estimator' } });
    expect([outlets, revisionId]).toEqual([[], null]);
    const { rows } = await test.owner.query<{ state: string }>('SELECT state FROM job_answer WHERE job_id = $1 ORDER BY id', [job.id]);
    expect(rows.map(({ state }) => state)).toEqual(['applied', 'granted']);
    await expect(test.owner.query(`UPDATE job_answer SET state = 'unknown' WHERE job_id = $1`, [job.id])).rejects.toMatchObject({ code: 'YF001' });
    await post(theirs.estimator.agent, `/jobs/${job.id}/permits`, { answers: [{ kind: 'tree', ...answer }] }, 404);
  });
});

describe('an answer that a phone kept without a signal', () => {
  const keptNow = (at: string, sentAt: string) => ({ id: randomUUID(), at, sentAt });

  it('counts from when it was given, by our clock, and once however often it is sent', async () => {
    const job = await newJob(ours);
    const say = (change: object, status = 200, by = ours.estimator) => post<Permits>(by.agent, `/jobs/${job.id}/permits`, { answers: [{ kind: 'tree', ...answer, ...change }] }, status);
    test.clock.set('2026-03-02T15:00:00Z');
    // Its clock is two hours behind: what it calls ten o'clock is noon.
    const kept = keptNow('2026-03-02T10:00:00Z', '2026-03-02T13:00:00Z');
    await say({ kept });
    await say({ kept: { ...kept, sentAt: '2026-03-02T13:20:00Z' } });
    const { rows } = await test.owner.query<{ at: Date; device_time: Date; clock_behind: number }>('SELECT at, device_time, clock_behind FROM job_answer WHERE job_id = $1', [job.id]);
    expect(rows).toEqual([{ at: new Date('2026-03-02T12:00:00Z'), device_time: new Date('2026-03-02T10:00:00Z'), clock_behind: 7200 }]);
    await say({ kept, state: 'refused', note: 'no' }, 409);
    await say({ kept }, 409, ours.owner);
    // A clock that goes ahead puts nothing into the future.
    await say({ kept: keptNow('2026-03-02T18:00:00Z', '2026-03-02T15:00:00Z') });
    expect((await get<Permits>(ours.owner.agent, `/jobs/${job.id}/permits`)).permits.find(({ kind }) => kind === 'tree')?.answer?.at).toBe('2026-03-02T15:00:00.000Z');
  });

  it('does not undo what the office heard after it', async () => {
    const job = await newJob(ours);
    const url = `/jobs/${job.id}/permits`;
    test.clock.set('2026-03-02T14:00:00Z');
    await post(ours.owner.agent, url, { answers: [{ kind: 'tree', ...answer, state: 'refused', note: 'They took it back' }] }, 200);
    test.clock.set('2026-03-02T16:00:00Z');
    const late = { kind: 'tree', ...answer, kept: keptNow('2026-03-02T13:00:00Z', '2026-03-02T16:00:00Z') };
    const { permits } = await post<Permits>(ours.estimator.agent, url, { answers: [late] }, 200);
    expect(permits.find(({ kind }) => kind === 'tree')).toMatchObject({ gap: 'refused', answer: { state: 'refused', by: 'Test owner' } });
  });

  it('about an outlet holds in the same way', async () => {
    const { job, revision } = await acceptedOffer(test, ours, withOpen('permissionHeld'));
    test.clock.set('2026-03-02T16:00:00Z');
    const body = { revisionId: revision.id, outlet: 'O1', question: 'O3', ...answer, kept: keptNow('2026-03-02T15:30:00Z', '2026-03-02T16:00:00Z') };
    for (let sent = 0; sent < 2; sent += 1) await post(ours.estimator.agent, `/jobs/${job.id}/permits/outlets`, body, 200);
    const { rows } = await test.owner.query<{ at: Date }>(`SELECT at FROM job_answer WHERE job_id = $1 AND topic = 'outlet'`, [job.id]);
    expect(rows).toEqual([{ at: new Date('2026-03-02T15:30:00Z') }]);
  }, 120_000);
});
