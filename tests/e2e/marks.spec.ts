import { expect, test } from '@playwright/test';
import type { Job, Photo } from '@yardfall/contracts';
import { jpeg } from './support/crew.ts';
import { api, signIn } from './support/people.ts';

test('an arrow drawn over each of two photos is kept with its own photo, and the pictures stay as they were taken', async ({ browser }) => {
  test.setTimeout(180_000);
  const crew = await signIn(browser, 'crew');
  const { page } = crew;
  const job = (await api<{ readonly items: readonly Job[] }>(crew, 'GET', '/jobs?open=true')).body.items.find(({ buildRevisionId }) => buildRevisionId !== null);
  await page.goto(`/jobs/${job?.id ?? ''}`);
  await page.getByRole('button', { name: 'Add a photo note' }).first().click();
  const form = page.getByRole('form', { name: 'Add a photo note' });
  const before = (await api<{ readonly items: readonly Photo[] }>(crew, 'GET', `/jobs/${job?.id ?? ''}/photos`)).body.items.map(({ id }) => id);
  await form.locator('input[type=file]').last().setInputFiles(await Promise.all(['one', 'two'].map(async (name) => ({ name: `${name}.jpg`, mimeType: 'image/jpeg', buffer: await jpeg() }))));
  for (const [at, name] of ['one.jpg', 'two.jpg'].entries()) {
    await form.getByText(`Draw over ${name}`).click();
    const pad = form.locator('.mark-pad').nth(at);
    await pad.scrollIntoViewIfNeeded();
    const box = await pad.boundingBox();
    if (box === null) throw new Error('there is no picture to draw over');
    const [left, top] = [box.x + box.width * 0.2, box.y + box.height * 0.3];
    await page.mouse.move(left, top);
    await page.mouse.down();
    await page.mouse.move(left + box.width * (0.2 + 0.2 * at), top + box.height * 0.2, { steps: 4 });
    await page.mouse.up();
    await expect(pad.locator('svg')).toBeVisible();
  }
  await form.getByRole('button', { name: 'Keep these photos' }).click();
  const sent = async () => (await api<{ readonly items: readonly Photo[] }>(crew, 'GET', `/jobs/${job?.id ?? ''}/photos`)).body.items.filter(({ id }) => !before.includes(id));
  await expect.poll(async () => (await sent()).length, { timeout: 60_000 }).toBe(2);
  const lengths = (await sent()).map(({ marks }) => marks.map(({ kind, from, to }) => [kind, Math.round((to.x - from.x) * 10)]));
  expect(lengths.map((one) => JSON.stringify(one)).sort()).toEqual(['[["arrow",2]]', '[["arrow",4]]']);
  expect(crew.complaints).toEqual([]);
  await crew.context.close();
});
