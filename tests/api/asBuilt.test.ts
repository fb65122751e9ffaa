import { asBuiltDocument, evaluate, type DesignDocument, type Pipe } from '@yardfall/calc';
import { type AsBuilt, canonicalBytes, type Job, sha256Hex } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, releasedJob } from '../support/builders.ts';
import { mayDig, Phone } from '../support/work.ts';

const inch = 0.0254;
let test: TestApp;
let ours: TestCompany;
let job: Job;
let phone: Phone;
let document: DesignDocument;
let pipe: Pipe;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  const released = await releasedJob(test, ours);
  job = released.job;
  document = released.revision.document as DesignDocument;
  const found = document.system.parts.find((part): part is Pipe => part.kind === 'pipe');
  if (found === undefined) throw new Error('the design has no pipe');
  pipe = found;
  await mayDig(ours.crew.agent, job.id);
  phone = await Phone.of(test, ours.crew, job.id);
  for (const itemKey of ['A2', 'B2', 'C5']) await phone.prove(itemKey);
}, 180_000);
afterAll(() => test.close());

const read = () => get<AsBuilt>(ours.crew.agent, `/jobs/${job.id}/as-built`);
/** Shots on the designed line at shares of the length, each raised by so many inches. */
const shots = (...places: readonly (readonly [share: number, raised: number])[]) =>
  places.map(([share, raised]) => ({ at: share * pipe.length, level: pipe.invertUp + share * (pipe.invertDown - pipe.invertUp) + raised * inch }));

describe('the design as it is built', () => {
  it('is the design itself while nothing has been shot', async () => {
    const built = await read();
    expect(built).toMatchObject({ levels: [], pipes: [], problem: null });
    expect(built.freeboards.length).toBeGreaterThan(0);
    for (const { designed, built: now } of built.freeboards) expect(now).toBe(designed);
    expect(built.documentSha256).toBe(await sha256Hex(canonicalBytes(document)));
  });

  it('names a hump by the state of its step, and answers with the same results as the phone computes from the same shots, to the last bit', async () => {
    const key = `E1:${pipe.id}`;
    const taken = shots([0, 0], [0.3, 0], [0.6, 4], [1, 0]);
    const { facts } = await phone.send([phone.fact(await phone.item(key), { kind: 'profile', shots: taken })]);
    expect(facts.map(({ verdict }) => verdict)).toEqual(['kept']);
    expect((await phone.item(key)).missing).toContain('outside:slope');

    const built = await read();
    expect(built.pipes).toEqual([{ part: pipe.id, shots: taken }]);
    // What the phone does with its own copy of the design and its own shots.
    const own = asBuiltDocument(document, [], [{ part: pipe.id, shots: taken }]);
    expect(built.documentSha256).toBe(await sha256Hex(canonicalBytes(own)));
    expect(built.resultsSha256).toBe(await sha256Hex(canonicalBytes(evaluate(own))));
    for (const { designed, built: now } of built.freeboards) expect(now).toBeLessThan(designed - 0.02);
  });

  it('keeps shots whose distances do not go on, and does not count them', async () => {
    const key = `E1:${pipe.id}`;
    const before = await read();
    const { facts } = await phone.send([phone.fact(await phone.item(key), { kind: 'profile', shots: [{ at: 3, level: 1 }, { at: 1, level: 1 }] }), phone.fact(await phone.item('B2'), { kind: 'profile', shots: shots([0, 0], [1, 0]) })]);
    expect(facts.map(({ verdict, reason }) => [verdict, reason])).toEqual([['refused', 'shotsNotRising'], ['refused', 'noSuchMeasure']]);
    expect((await read()).documentSha256).toBe(before.documentSha256);
  });

  it('laid again and shot again it is as designed, and the step waits for what was changed and a second look', async () => {
    const key = `E1:${pipe.id}`;
    await phone.send([phone.fact(await phone.item(key), { kind: 'profile', shots: shots([0, 0], [0.3, 0], [0.6, 0], [1, 0]) })]);
    expect((await phone.item(key)).state).toBe('failed');
    for (const { designed, built } of (await read()).freeboards) expect(built).toBeCloseTo(designed, 6);
    await phone.send([phone.fact(await phone.item(key), { kind: 'corrected', note: 'third joint let down a quarter' })]);
    await phone.send([phone.fact(await phone.item(key), { kind: 'profile', shots: shots([0, 0], [0.3, 0], [0.6, 0], [1, 0]) })]);
    expect(await phone.item(key)).toMatchObject({ state: 'started', missing: ['tick', 'photo:1', 'signature:second'] });
    for (const { designed, built } of (await read()).freeboards) expect(built).toBeCloseTo(designed, 6);
  });

  it('is read by whoever reads the checklist, of a job that is being built', async () => {
    const other = await makeCompany(test, 'Other Yards');
    await other.owner.agent.get(`/api/v1/jobs/${job.id}/as-built`).expect(404);
    expect((await get<AsBuilt>(ours.owner.agent, `/jobs/${job.id}/as-built`)).revisionId).toBe(job.buildRevisionId);
  });
});
