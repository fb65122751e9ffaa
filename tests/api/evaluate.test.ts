import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { evaluate } from '@yardfall/calc';
import { readDesignDocument } from '@yardfall/contracts';
import { makeCompany, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';

const siteText = readFileSync(new URL('../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8');
const site = (): Record<string, unknown> => JSON.parse(siteText) as Record<string, unknown>;

describe('evaluating a document', () => {
  let test: TestApp;
  let ours: TestCompany;
  beforeAll(async () => {
    test = await startApp();
    ours = await makeCompany(test);
  });
  afterAll(() => test.close());

  const send = (document: unknown) => ours.crew.agent.post('/api/v1/evaluate').send({ document });

  it('gives in a thread, bit for bit, what the engine gives here', async () => {
    const { body } = await send(site()).expect(200);
    const { document, sha256 } = await readDesignDocument(site());
    expect(body.documentSha256).toBe(sha256);
    expect(body.evaluation).toEqual(JSON.parse(JSON.stringify(evaluate(document))));
  });

  it('names the path of what cannot be computed', async () => {
    const { body } = await send({ ...site(), system: { parts: [{ kind: 'nothing of ours' }] } }).expect(400);
    expect(body).toMatchObject({ code: 'request.invalid' });
    expect(body.issues[0].path).toMatch(/^body\.document\.system\.parts/);
    const looped = site() as { system: { parts: { id: string; drainsTo: string | null }[] } };
    const part = looped.system.parts.find(({ drainsTo }) => drainsTo !== null);
    if (part === undefined) throw new Error('the site has no part that drains');
    part.drainsTo = 'nowhere';
    const refused = await send(looped).expect(422);
    expect(refused.body).toMatchObject({ code: 'document.invalid', issues: [{ message: expect.stringMatching(/^document\./) as string }] });
  });

  it('refuses half a megabyte', async () => {
    const { body } = await send({ ...site(), padding: 'x'.repeat(600_000) }).expect(413);
    expect(body.code).toBe('request.tooLarge');
  });
});
