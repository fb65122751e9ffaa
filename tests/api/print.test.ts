import type { DesignDocument } from '@yardfall/calc';
import type { Revision } from '@yardfall/contracts';
import { extractText, getDocumentProxy } from 'unpdf';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { key, makeCompany, makePerson, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { acknowledgeAll, call, draftRevision, get, issue, issuedRevision, post, siteDocument, type Agent } from '../support/builders.ts';

let test: TestApp;
let ours: TestCompany;
let theirs: TestCompany;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  theirs = await makeCompany(test, 'Other Yards');
}, 120_000);
afterAll(() => test.close());

interface Paper { readonly status: number; readonly type: string; readonly bytes: Buffer; readonly name: string }

async function print(agent: Agent, { jobId, id }: Revision, query: string): Promise<Paper> {
  const response = await agent.get(`/api/v1/jobs/${jobId}/revisions/${id}/print?${query}`).buffer(true).parse((incoming, done) => {
    const chunks: Buffer[] = [];
    incoming.on('data', (chunk: Buffer) => chunks.push(chunk));
    incoming.on('end', () => done(null, Buffer.concat(chunks)));
  });
  return { status: response.status, type: String(response.headers['content-type']), bytes: response.body as Buffer, name: String(response.headers['content-disposition']) };
}

/** Title, author and dates of a file stand in it as plain text. */
const told = ({ bytes }: Paper): string => bytes.toString('latin1');

describe('a revision on paper', () => {
  it('is one and the same file for an issued revision, in every sheet, paper and language', async () => {
    const { revision } = await issuedRevision(ours);
    for (const query of ['sheet=section', 'sheet=section&paper=a4&units=metric', 'sheet=storm&language=es', 'sheet=pump']) {
      const first = await print(ours.estimator.agent, revision, query);
      expect([first.status, first.type], query).toEqual([200, 'application/pdf']);
      expect(first.bytes.subarray(0, 5).toString()).toBe('%PDF-');
      test.clock.forward(86_400);
      expect((await print(ours.owner.agent, revision, `${query}&${query.includes('language') ? '' : 'language=en&'}${query.includes('units') ? '' : 'units=us'}`)).bytes.equals(first.bytes), query).toBe(true);
    }
    const us = await print(ours.estimator.agent, revision, 'sheet=section');
    expect(us.name).toMatch(/^inline; filename="job-\d+-revision-1-section\.pdf"$/);
    expect((await print(ours.estimator.agent, revision, 'sheet=section&language=es')).bytes.equals(us.bytes)).toBe(false);
    expect((await print(ours.estimator.agent, revision, 'sheet=section&units=metric')).bytes.equals(us.bytes)).toBe(false);
  });

  it('carries no name and no address of the customer', async () => {
    const { job, revision } = await issuedRevision(ours);
    const paper = await print(ours.estimator.agent, revision, 'sheet=section');
    const words = await extractText(await getDocumentProxy(new Uint8Array(paper.bytes)), { mergePages: true });
    const text = `${told(paper)}\n${words.text}`;
    for (const said of [`${String(job.number)}: Section`, `Job ${String(job.number)}, property in NC`, revision.documentSha256.slice(0, 32), 'Test estimator']) expect(text).toContain(said);
    for (const kept of [call.customer.name, call.property.address, call.title, call.property.gateCode]) expect(text).not.toContain(kept);
  });

  it('is read by whoever reads the design, and by nobody else', async () => {
    const { job, revision } = await issuedRevision(ours);
    const crew = await makePerson(test, ours.id, ['crew']);
    expect((await print(crew.agent, revision, 'sheet=section')).status).toBe(404);
    await ours.owner.agent.put(`/api/v1/jobs/${job.id}/assignments`).set(key()).send({ assignments: [{ memberId: crew.id, role: 'crew' }] }).expect(200);
    expect((await print(crew.agent, revision, 'sheet=section')).status).toBe(200);
    expect((await print(theirs.owner.agent, revision, 'sheet=section')).status).toBe(404);
  });

  it('is refused where there is nothing of it, and where the request makes no sense', async () => {
    const { revision } = await draftRevision(ours, siteDocument('ridgeback'));
    expect((await print(ours.estimator.agent, revision, 'sheet=section')).status).toBe(200);
    for (const sheet of ['pump', 'plan']) expect((await print(ours.estimator.agent, revision, `sheet=${sheet}`)).status).toBe(404);
    for (const query of ['', 'sheet=roof', 'sheet=section&paper=a0', 'sheet=compare', `sheet=section&against=${revision.id}`]) expect((await print(ours.estimator.agent, revision, query)).status, query).toBe(400);
  });

  it('draws a plan with what its spot levels make', async () => {
    const site = siteDocument('ridgeback');
    const shots = [[0, 0, 30.4], [12, 0, 30.5], [12, 12, 30.6], [0, 12, 30.5], [6, 6, 30.2]] as const;
    const document: DesignDocument = {
      ...site, site: {
        ...site.site,
        spotLevels: [...site.site.spotLevels, ...shots.map(([x, y, level], i) => ({ id: `Q${String(i)}`, name: `Shot ${String(i)}`, level, station: null, position: { x, y } }))],
        plan: { picture: null, north: 15, shapes: [{ id: 'Z1', name: 'House', kind: 'area', use: 'house', of: null, points: [{ x: 0, y: 0 }, { x: 12, y: 0 }, { x: 12, y: -6 }, { x: 0, y: -6 }] }] },
      },
    };
    const { revision } = await draftRevision(ours, document);
    const plan = await print(ours.estimator.agent, revision, 'sheet=plan');
    expect(plan.status).toBe(200);
    expect(told(plan)).toContain(': Plan)');
  });

  it('lays a later revision over an earlier one', async () => {
    const { job, revision } = await issuedRevision(ours);
    const next = await post<Revision>(ours.estimator.agent, `/jobs/${job.id}/designs/${revision.designId}/revisions`, { fromRevisionId: revision.id }, 201);
    const pipe = next.document.system.parts.find(({ id }) => id === 'P1');
    if (pipe?.kind !== 'pipe') throw new Error('the site has no pipe P1');
    const lower = { kind: 'replace', path: ['system', 'parts', '@P1', 'invertDown'], value: pipe.invertDown - 0.02 };
    const edited = await post<Revision>(ours.estimator.agent, `/jobs/${job.id}/revisions/${next.id}/operations`, { base: 1, operations: [lower] }, 200);
    const over = await print(ours.estimator.agent, edited, `sheet=compare&against=${revision.id}`);
    expect(over.status).toBe(200);
    expect(told(over)).toContain(': Section, two revisions)');
    const other = await issuedRevision(ours);
    expect((await print(ours.estimator.agent, edited, `sheet=compare&against=${other.revision.id}`)).status).toBe(404);
  });

  it('tells a draft, an issued and a superseded revision apart', async () => {
    const { job, revision } = await issuedRevision(ours);
    const issued = await print(ours.estimator.agent, revision, 'sheet=section');
    const next = await post<Revision>(ours.estimator.agent, `/jobs/${job.id}/designs/${revision.designId}/revisions`, { fromRevisionId: revision.id }, 201);
    const draft = await print(ours.estimator.agent, next, 'sheet=section');
    await issue(ours.estimator.agent, await acknowledgeAll(ours.estimator.agent, await get<Revision>(ours.estimator.agent, `/jobs/${job.id}/revisions/${next.id}`)));
    const old = await print(ours.estimator.agent, revision, 'sheet=section');
    expect(draft.bytes.length).toBeGreaterThan(issued.bytes.length);
    expect(old.bytes.length).toBeGreaterThan(issued.bytes.length);
  });
});
