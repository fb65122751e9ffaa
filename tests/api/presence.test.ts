import type { Presence, Revision } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeCompany, makePerson, type Person, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { acknowledgeAll, draftRevision, issue } from '../support/builders.ts';

let test: TestApp;
let ours: TestCompany;
let second: Person;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  second = await makePerson(test, ours.id, ['estimator']);
}, 120_000);
afterAll(() => test.close());

const put = (agent: Person['agent'], { jobId, id }: Revision, body: object) => agent.put(`/api/v1/jobs/${jobId}/revisions/${id}/presence`).send(body);
const at = (part: string | null, here = true) => ({ part, here });
const others = async (agent: Person['agent'], revision: Revision, body: object): Promise<Presence[]> => ((await put(agent, revision, body).expect(200)).body as { others: Presence[] }).others;
const notices = async (id: string): Promise<number> => Number((await test.owner.query<{ count: string }>("SELECT count(*) FROM event WHERE topic = 'presence' AND subject_id = $1", [id])).rows[0]?.count);
const trail = async (jobId: string): Promise<number> => Number((await test.owner.query<{ count: string }>('SELECT count(*) FROM audit_entry WHERE job_id = $1', [jobId])).rows[0]?.count);

describe('two estimators at one draft', () => {
  it('see each other and the part that each is at, until one goes or is not heard of', async () => {
    const { revision } = await draftRevision(ours);
    expect(await others(ours.estimator.agent, revision, at(null))).toEqual([]);
    expect(await others(second.agent, revision, at('P1'))).toEqual([{ memberId: ours.estimator.id, name: 'Test estimator', part: null }]);
    expect(await others(ours.estimator.agent, revision, at('CH1'))).toMatchObject([{ memberId: second.id, part: 'P1' }]);
    expect(await others(second.agent, revision, at('P1', false))).toMatchObject([{ part: 'CH1' }]);
    expect(await others(ours.estimator.agent, revision, at('CH1'))).toEqual([]);
    await others(second.agent, revision, at('B1'));
    test.clock.forward(74);
    expect(await others(ours.estimator.agent, revision, at('CH1'))).toHaveLength(1);
    test.clock.forward(2);
    expect(await others(ours.estimator.agent, revision, at('CH1'))).toEqual([]);
  });

  it('are told when something changed, not at every beat, and the trail hears nothing', async () => {
    const { job, revision } = await draftRevision(ours);
    const before = await trail(job.id);
    await others(ours.estimator.agent, revision, at('CH1'));
    for (let beat = 0; beat < 3; beat += 1) await others(ours.estimator.agent, revision, at('CH1'));
    expect(await notices(revision.id)).toBe(1);
    await others(ours.estimator.agent, revision, at('P1'));
    await others(ours.estimator.agent, revision, at('P1', false));
    await others(ours.estimator.agent, revision, at('P1', false));
    expect(await notices(revision.id)).toBe(3);
    expect(await trail(job.id)).toBe(before);
  });

  it('only of a draft, and only for those who edit it', async () => {
    const { revision } = await draftRevision(ours);
    await put(ours.crew.agent, revision, at(null)).expect(403);
    const theirs = await makeCompany(test, 'Other Yards');
    await put(theirs.owner.agent, revision, at(null)).expect(404);
    await put(ours.estimator.agent, revision, { part: 'x'.repeat(41), here: true }).expect(400);
    const issued = await issue(ours.estimator.agent, await acknowledgeAll(ours.estimator.agent, revision));
    const refused = await put(ours.estimator.agent, issued, at(null)).expect(409);
    expect((refused.body as { code: string }).code).toBe('design.notDraft');
  });
});
