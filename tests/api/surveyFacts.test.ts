import { randomUUID } from 'node:crypto';
import { canonicalBytes, type Job, sha256Hex, type StoredSurveyFact, type Survey, type SurveyFact } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ternHollowSurvey } from '../../apps/api/src/seed/sites/ternHollow.survey.ts';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, newJob, post } from '../support/builders.ts';
import { foldedOf, recordedOf, Surveyor } from '../support/surveyor.ts';

let test: TestApp;
let ours: TestCompany;
let theirs: TestCompany;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  theirs = await makeCompany(test, 'Other Yards');
});
afterAll(() => test.close());

const outcomes = (facts: readonly StoredSurveyFact[]) => facts.map(({ verdict, reason }) => (reason === null ? verdict : `${verdict} ${reason}`));
const surveyOf = (jobId: string, id: string) => get<Survey>(ours.estimator.agent, `/jobs/${jobId}/surveys/${id}`);

async function inTheField() {
  const job = await newJob(ours);
  const phone = await Surveyor.of(ours.estimator, job.id);
  const surveyId = randomUUID();
  return { job, phone, surveyId, begun: phone.fact(surveyId, { kind: 'begun', entry: 'survey', seen: [], value: { name: 'In the yard' } }) };
}

describe('a survey that is recorded in the field', () => {
  it('is born by its first fact, grows by every other, and moves the job on', async () => {
    const { job, phone, surveyId, begun } = await inTheField();
    await phone.send([begun]);
    expect(await surveyOf(job.id, surveyId)).toMatchObject({ name: 'In the yard', version: 1, content: { levelBook: { readings: [] } }, disputed: [] });
    expect((await get<Job>(ours.owner.agent, `/jobs/${job.id}`)).stage).toBe('visit');
    const { facts, surveys } = await phone.send([phone.reading(surveyId, { point: 'Sill', backsight: 1.2, intermediate: null }), phone.reading(surveyId, { point: 'Rim', place: 2 })]);
    expect(outcomes(facts)).toEqual(['kept', 'kept']);
    const survey = await surveyOf(job.id, surveyId);
    expect(surveys).toEqual([survey]);
    expect(survey.version).toBe(2);
    expect(survey.content.levelBook.readings.map(({ point }) => point)).toEqual(['Sill', 'Rim']);
    expect(survey.sha256).toBe(await sha256Hex(canonicalBytes(survey.content)));
    expect((await get<Job>(ours.owner.agent, `/jobs/${job.id}`)).stage).toBe('design');
  });

  it('is what the phone makes of the same facts', async () => {
    const { job, phone, surveyId, begun } = await inTheField();
    const shot = phone.reading(surveyId, { pin: { x: 3, y: 4 }, photoIds: [randomUUID()] });
    await phone.send([begun, shot, phone.fact(surveyId, { kind: 'diagnosis', entry: 'diagnosis:hose', seen: [], value: { picks: ['ponds'], figures: { depth: 0.05 }, note: '', pin: null, photoIds: [] } })]);
    const folded = await foldedOf(ours.estimator, job.id, surveyId);
    expect(folded.content).toEqual((await surveyOf(job.id, surveyId)).content);
    expect(folded.entries.find(({ kind }) => kind === 'reading')?.value).toMatchObject({ pin: { x: 3, y: 4 } });
    expect(folded.entries.find(({ kind }) => kind === 'diagnosis')?.value).toMatchObject({ picks: ['ponds'] });
  });

  it('is the same whatever the order in which its facts come, and however often', async () => {
    const { job, phone, surveyId, begun } = await inTheField();
    const first = phone.reading(surveyId, { point: 'A' });
    const id = first.entry.slice('reading:'.length);
    const corrected = phone.reading(surveyId, { id, point: 'A', intermediate: 1.5 }, [first.id]);
    const strike = phone.fact(surveyId, { kind: 'struck', entry: first.entry, seen: [first.id, corrected.id], reason: 'rod was not plumb' });
    const other = phone.reading(surveyId, { point: 'B', place: 0.5 });
    await phone.send([strike]);
    await phone.send([other, corrected]);
    await phone.send([other]);
    await phone.send([corrected, first, strike]);
    await phone.send([begun, begun]);
    const survey = await surveyOf(job.id, surveyId);
    expect(survey).toMatchObject({ name: 'In the yard', disputed: [] });
    expect(survey.content.levelBook.readings.map(({ point }) => point)).toEqual(['B']);
    expect((await recordedOf(ours.estimator, job.id)).facts).toHaveLength(5);
    expect((await foldedOf(ours.estimator, job.id, surveyId)).entries.find(({ struck }) => struck)?.value).toMatchObject({ point: 'A', intermediate: 1.5 });
  });

  it('stores every fact once when many requests bring the same ones at the same time', async () => {
    const { job, phone, surveyId, begun } = await inTheField();
    const facts = [begun, ...Array.from({ length: 14 }, (_, index) => phone.reading(surveyId, { point: `P${String(index)}`, place: index }))];
    await Promise.all(Array.from({ length: 4 }, (_, n) => phone.send(n % 2 === 0 ? facts : [...facts].reverse())));
    expect((await recordedOf(ours.estimator, job.id)).facts).toHaveLength(15);
    expect((await surveyOf(job.id, surveyId)).content.levelBook.readings.map(({ point }) => point)).toEqual(facts.slice(1).map((_, index) => `P${String(index)}`));
  });
});

describe('two phones on one survey', () => {
  it('that say different things of one entry leave it disputed, told in the reduction, until a person chooses', async () => {
    const { job, phone, surveyId, begun } = await inTheField();
    const second = await Surveyor.of(ours.owner, job.id);
    const shot = phone.reading(surveyId, { intermediate: 1.2 });
    await phone.send([begun, shot]);
    const id = shot.entry.slice('reading:'.length);
    const [mine, theirOwn] = [phone.reading(surveyId, { id, intermediate: 1.3 }, [shot.id]), second.reading(surveyId, { id, intermediate: 1.4 }, [shot.id])];
    await second.send([theirOwn]);
    await phone.send([mine]);
    const disputed = await surveyOf(job.id, surveyId);
    expect(disputed.disputed).toEqual([shot.entry]);
    expect(disputed.reduction.problems).toContainEqual({ code: 'surveys.disputed', readingId: id, params: {} });
    expect(disputed.content.levelBook.readings[0]?.intermediate).toBe(1.3);
    const { entries } = await foldedOf(ours.owner, job.id, surveyId);
    const entry = entries.find(({ key: entryKey }) => entryKey === shot.entry);
    await second.send([second.reading(surveyId, { id, intermediate: 1.4 }, entry?.seen ?? [])]);
    expect(await surveyOf(job.id, surveyId)).toMatchObject({ disputed: [], content: { levelBook: { readings: [{ intermediate: 1.4 }] } } });
  });

  it('one id with other bytes is kept beside the first, with the reason, and changes nothing', async () => {
    const { job, phone, surveyId, begun } = await inTheField();
    const shot = phone.reading(surveyId, { intermediate: 1.2 });
    const { facts: [, stored] } = await phone.send([begun, shot]);
    const forged = { ...shot, value: { ...(shot as Extract<SurveyFact, { kind: 'reading' }>).value, intermediate: 2 } } as SurveyFact;
    expect(outcomes((await phone.send([forged])).facts)).toEqual(['refused sameIdOtherFact']);
    expect(outcomes((await phone.send([forged, shot])).facts)).toEqual(['refused sameIdOtherFact', 'kept']);
    const kept = (await recordedOf(ours.estimator, job.id)).facts.filter(({ fact }) => fact.id === shot.id);
    expect(kept.map(({ fact }) => fact)).toEqual(expect.arrayContaining([shot, forged]));
    expect(kept).toHaveLength(2);
    expect(kept).toContainEqual(stored);
    expect((await surveyOf(job.id, surveyId)).content.levelBook.readings[0]?.intermediate).toBe(1.2);
  });
});

describe('a fact that does not count', () => {
  it('of a phone that was cut off is stored in quarantine, and that phone reads nothing', async () => {
    const { job, phone, surveyId, begun } = await inTheField();
    await phone.send([begun]);
    await post(ours.owner.agent, `/devices/${phone.id}/cut-off`, {}, 200);
    const { facts, surveys } = await phone.send([phone.reading(surveyId)]);
    expect([outcomes(facts), surveys]).toEqual([['quarantined deviceCutOff'], []]);
    expect((await surveyOf(job.id, surveyId)).content.levelBook.readings).toEqual([]);
    expect((await recordedOf(ours.estimator, job.id)).facts).toHaveLength(2);
  });
  it('of another job, or of a survey of another job, is stored as refused', async () => {
    const { job, phone, surveyId, begun } = await inTheField();
    await phone.send([begun]);
    const elsewhere = await newJob(ours);
    const stray = await Surveyor.of(ours.owner, elsewhere.id);
    const { facts } = await stray.send([stray.reading(surveyId), stray.reading(randomUUID(), {}, []), stray.fact(randomUUID(), begun, { jobId: job.id })]);
    expect(outcomes(facts)).toEqual(['refused otherJob', 'kept', 'refused otherJob']);
    expect((await surveyOf(job.id, surveyId)).content.levelBook.readings).toEqual([]);
  });
  it('of a job that was declined is stored as late', async () => {
    const { job, phone, begun } = await inTheField();
    await test.owner.query(`UPDATE job SET stage = 'declined' WHERE id = $1`, [job.id]);
    expect(outcomes((await phone.send([begun])).facts)).toEqual(['late jobClosed']);
    expect((await recordedOf(ours.estimator, job.id)).facts).toHaveLength(1);
    expect((await get<{ items: Survey[] }>(ours.estimator.agent, `/jobs/${job.id}/surveys`)).items).toEqual([]);
  });
  it('is asked of no phone that nobody knows, and of no job of another company', async () => {
    const { job, phone, begun } = await inTheField();
    const url = `/api/v1/jobs/${job.id}/survey-facts`;
    await ours.estimator.agent.post(url).set(key()).send({ facts: [{ ...begun, deviceId: randomUUID() }] }).expect(404);
    await theirs.owner.agent.post(url).set(key()).send({ facts: [begun] }).expect(404);
    await theirs.owner.agent.get(url).expect(404);
    await ours.estimator.agent.post(url).set(key()).send({ facts: [{ ...begun, entry: 'benchMark' }] }).expect(400);
    await phone.send([begun]);
    expect((await recordedOf(ours.estimator, job.id)).facts).toHaveLength(1);
  });
});

describe('a survey that was typed at the desk', () => {
  it('takes facts of a phone, which begin from what it was', async () => {
    const job = await newJob(ours);
    const { id } = await post<Survey>(ours.estimator.agent, `/jobs/${job.id}/surveys`, { name: 'Typed', content: ternHollowSurvey }, 201);
    expect((await foldedOf(ours.estimator, job.id, id)).content).toEqual(ternHollowSurvey);
    const phone = await Surveyor.of(ours.estimator, job.id);
    const [reading] = ternHollowSurvey.levelBook.readings;
    await phone.send([phone.fact(id, { kind: 'struck', entry: `reading:${reading?.id ?? ''}`, seen: [], reason: 'shot again' })]);
    const after = await surveyOf(job.id, id);
    expect(after).toMatchObject({ name: 'Typed', version: 2, content: { levelBook: { readings: ternHollowSurvey.levelBook.readings.slice(1) } } });
    expect(after.content.points).toEqual(ternHollowSurvey.points);
  });

  it('of one with facts becomes facts of the desk by difference: a phone that did not see it makes a dispute and overwrites nothing', async () => {
    const { job, phone, surveyId, begun } = await inTheField();
    const shot = phone.reading(surveyId, { intermediate: 1.2, pin: { x: 1, y: 1 } });
    await phone.send([begun, shot]);
    const before = await surveyOf(job.id, surveyId);
    const put = (version: number, content: Survey['content']) => ours.estimator.agent.put(`/api/v1/jobs/${job.id}/surveys/${surveyId}`).set(key()).set('If-Match', `"${String(version)}"`).send({ name: 'In the yard', content });
    const readings = before.content.levelBook.readings.map((one) => ({ ...one, intermediate: 1.25 }));
    await put(before.version, { ...before.content, levelBook: { ...before.content.levelBook, readings } }).expect(200);
    await put(before.version, before.content).expect(412);
    const { facts } = await recordedOf(ours.estimator, job.id);
    expect(facts.map(({ fact }) => [fact.kind, ...fact.seen].join(' ')).sort()).toEqual(['begun', 'reading', `reading ${shot.id}`]);
    expect((await foldedOf(ours.estimator, job.id, surveyId)).entries.find(({ kind }) => kind === 'reading')?.value).toMatchObject({ intermediate: 1.25, pin: { x: 1, y: 1 } });
    await phone.send([phone.reading(surveyId, { id: shot.entry.slice('reading:'.length), intermediate: 1.3 }, [shot.id])]);
    expect((await surveyOf(job.id, surveyId)).disputed).toEqual([shot.entry]);
  });
});
