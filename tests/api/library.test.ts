import type { LibraryEntry, LibraryInput } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { key, makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { get, post } from '../support/builders.ts';

let test: TestApp;
let ours: TestCompany;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
});
afterAll(() => test.close());

/** Invented datasheets. */
const pump = (name: string, heads: readonly number[] = [8, 6, 2]): LibraryInput => ({
  name, source: 'Sheet 12, 2026', priceCode: null, content: { kind: 'pump', solids: 0.0127, minSubmergence: 0.1, curve: heads.map((head, at) => ({ flow: at * 0.0015, head })) },
});
const pipe = (name: string, diameter: number): LibraryInput => ({ name, source: '', priceCode: 'pipe.4', content: { kind: 'pipe', diameter, roughness: 0.011, material: 'smoothSolid', joints: 'glued' } });
const list = async () => (await get<{ items: LibraryEntry[] }>(ours.crew.agent, '/library')).items;
const change = (entry: LibraryEntry, body: object, version = entry.version) => ours.owner.agent.put(`/api/v1/library/${entry.id}`).set(key()).set('If-Match', `"${String(version)}"`).send(body);

describe('the library of a company', () => {
  it('keeps an entry with its source and the hash of its figures, and shows it to the crew', async () => {
    const made = await post<LibraryEntry>(ours.estimator.agent, '/library', pump('Sump pump A'), 201);
    expect(made).toMatchObject({ name: 'Sump pump A', source: 'Sheet 12, 2026', active: true, version: 1, by: 'Test estimator', content: pump('').content });
    expect(made.sha256).toMatch(/^[0-9a-f]{64}$/);
    expect(await list()).toContainEqual(made);
  });

  it('a curve that rises, has two points or begins with flow is refused by its field', async () => {
    const refused = async (body: LibraryInput) => (await ours.estimator.agent.post('/api/v1/library').set(key()).send(body).expect(400)).body as { issues: { path: string; message: string }[] };
    expect((await refused(pump('Rising', [6, 7, 2]))).issues).toEqual([{ path: 'body.content.curve.1', message: 'Point 2: the head must fall while the flow rises.' }]);
    expect((await refused(pump('Short', [6, 2]))).issues[0]?.path).toBe('body.content.curve');
    const late: LibraryInput = { ...pump('Late'), content: { kind: 'pump', solids: 0, minSubmergence: 0, curve: [{ flow: 0.001, head: 6 }, { flow: 0.002, head: 4 }, { flow: 0.003, head: 2 }] } };
    expect((await refused(late)).issues[0]?.message).toMatch(/shut-off head/);
    expect((await list()).map(({ name }) => name)).not.toContain('Rising');
  });

  it('changes by version; the hash follows the figures and not the name', async () => {
    const made = await post<LibraryEntry>(ours.estimator.agent, '/library', pipe('Four inch', 0.1016), 201);
    const renamed = (await change(made, { ...pipe('4 in PVC', 0.1016), active: true }).expect(200)).body as LibraryEntry;
    expect([renamed.version, renamed.sha256, renamed.by]).toEqual([2, made.sha256, 'Test owner']);
    expect((await change(made, { ...pipe('4 in PVC', 0.1), active: true }).expect(412)).body.code).toBe('conflict.stale');
    const wider = (await change(renamed, { ...pipe('4 in PVC', 0.15), active: false }).expect(200)).body as LibraryEntry;
    expect([wider.sha256 === made.sha256, wider.active]).toEqual([false, false]);
  });

  it('has one name once a kind', async () => {
    await post(ours.estimator.agent, '/library', pump('Twice'), 201);
    expect((await ours.estimator.agent.post('/api/v1/library').set(key()).send(pump('Twice')).expect(409)).body.code).toBe('conflict.duplicate');
    await post(ours.estimator.agent, '/library', pipe('Twice', 0.1), 201);
  });

  it('takes a whole list at once: new, changed and same; one wrong line and nothing is taken', async () => {
    const before = await list();
    const entries = [pump('Import 1'), pump('Twice', [9, 6, 1]), pipe('Twice', 0.1)];
    expect(await post(ours.estimator.agent, '/library/import', { entries }, 200)).toEqual({ added: 1, changed: 1, same: 1 });
    const after = await list();
    expect(after.length).toBe(before.length + 1);
    const bad = await ours.estimator.agent.post('/api/v1/library/import').set(key()).send({ entries: [pump('Import 2'), pump('Import 3', [1, 2, 3])] }).expect(400);
    expect(bad.body.issues[0].path).toBe('body.entries.1.content.curve.1');
    expect(await list()).toEqual(after);
  });
});
