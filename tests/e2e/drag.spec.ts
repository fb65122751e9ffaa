import { expect, test } from '@playwright/test';
import type { Revision } from '@yardfall/contracts';
import { dragBasinInvert, openYard } from './support/drag.ts';
import { api } from './support/people.ts';

test('after a drag of the basin invert the page holds the same results as the office, to the last bit', async ({ browser }) => {
  test.setTimeout(240_000);
  const { person, design, jobId, revisionId } = await openYard(browser, `Drag ${String(Date.now() % 100_000)}`);
  const read = async () => (await api<Revision>(person, 'GET', `/jobs/${jobId}/revisions/${revisionId}`)).body;
  const before = await read();
  const mark = design.locator('[data-results]');
  await expect(mark).toHaveAttribute('data-results', before.evaluationSha256 ?? '', { timeout: 60_000 });

  expect((await dragBasinInvert(person.page, design, 2)).length).toBeGreaterThan(1);
  await expect.poll(async () => (await read()).version, { timeout: 30_000 }).toBeGreaterThan(before.version);
  const after = await read();
  expect(after.documentSha256).not.toBe(before.documentSha256);
  expect(after.evaluationSha256).not.toBe(before.evaluationSha256);
  await expect(mark).toHaveAttribute('data-results', after.evaluationSha256 ?? '', { timeout: 60_000 });
  expect(person.complaints).toEqual([]);
  await person.context.close();
});
