import { brotliDecompressSync } from 'node:zlib';
import { expect, test, type Page } from '@playwright/test';
import type { Job } from '@yardfall/contracts';
import { BadLink, type Rewrite } from './support/badLink.ts';
import { jpeg } from './support/crew.ts';
import { screenOf } from './support/crewDay.ts';
import { api } from './support/people.ts';
import { Pocket } from './support/pocket.ts';
import { readyForTheYard } from './support/ready.ts';
import { member } from './support/readyJob.ts';

/** A part of the page that is fetched when it is needed, and that the next version has under another name. */
const laterPart = /\/assets\/ItemScreen-[\w-]+\.js/;

/** The office after a release: another version of the worker and of the page, and one file of the old version is gone. */
const nextVersion: Rewrite = (path, { status, headers, body }) => {
  const plain = headers['content-encoding'] === 'br' ? brotliDecompressSync(body).toString() : body.toString();
  const changed = (text: string) => ({ status, headers: { 'content-type': headers['content-type'], 'cache-control': 'no-cache' }, body: Buffer.from(text) });
  if (laterPart.test(path)) return { status: 404, headers: {}, body: Buffer.alloc(0) };
  if (path === '/sw.js') return changed(plain.replace(/"version":"\w+"/, '"version":"0123456789abcdef"').replace(new RegExp(`"${laterPart.source}",?`), ''));
  return headers['content-type']?.startsWith('text/html') ? changed(plain.replace('<html ', '<html data-version="next" ')) : undefined;
};

const versionOf = (page: Page) => page.locator('html').getAttribute('data-version');
const waits = (page: Page) => page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.waiting?.state ?? null);

/** The person looks away, as when the camera or another app is opened. */
async function lookAway(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const state of ['hidden', 'visible']) {
      Object.defineProperty(document, 'visibilityState', { value: state, configurable: true });
      document.dispatchEvent(new Event('visibilitychange'));
    }
  });
}

test('a new version waits while something is on the phone only, changes no page that is open, and serves the next opening when all has been sent', async ({ browser, baseURL }) => {
  test.setTimeout(240_000);
  const crew = await member(browser, 'crew');
  const job = (await api<{ readonly items: readonly Job[] }>(crew, 'GET', '/jobs?open=true&limit=100')).body.items.find(({ title, buildRevisionId }) => title === 'Wicker Road' && buildRevisionId !== null);
  if (job === undefined) throw new Error('the crew has no job');
  const link = await BadLink.to(baseURL ?? '');
  const pocket = new Pocket();
  await pocket.switchOn();
  await pocket.signIn(link.url);
  const jobPage = `${link.url}/jobs/${job.id}`;
  await pocket.goTo(jobPage);
  const { page } = pocket;
  await readyForTheYard(page, job.id);
  const onPhone = page.getByRole('complementary', { name: 'On this phone' });

  await test.step('something is recorded that does not get through', async () => {
    link.turnBad(true, ['badGateway']);
    await page.getByRole('button', { name: 'Add a photo note' }).first().click();
    const form = page.getByRole('form', { name: 'Add a photo note' });
    await form.locator('input[type=file]').last().setInputFiles({ name: 'one.jpg', mimeType: 'image/jpeg', buffer: await jpeg() });
    await form.getByRole('button', { name: 'Keep this photo' }).click();
    await expect(onPhone).toContainText('not yet in the office');
  });

  await test.step('the office has a new version: it is fetched and waits, also when the page is opened anew', async () => {
    link.answerOtherwise(nextVersion);
    await page.evaluate(async () => { await (await navigator.serviceWorker.getRegistration())?.update(); });
    await expect.poll(() => waits(page), { timeout: 60_000 }).toBe('installed');
    await lookAway(page);
    await page.reload();
    await expect(onPhone).toContainText('not yet in the office');
    await lookAway(page);
    expect([await versionOf(page), await waits(page)]).toEqual([null, 'installed']);
  });

  await test.step('all is sent: the new version takes over, and the open page still has all of its own parts', async () => {
    link.turnBad(false);
    await expect(onPhone).toBeHidden({ timeout: 90_000 });
    await pocket.emptyCache();
    await lookAway(page);
    await expect.poll(() => waits(page), { timeout: 30_000 }).toBeNull();
    expect(await versionOf(page)).toBeNull();
    await page.locator('.next-item').getByRole('button', { name: /^Next/ }).click();
    await expect(screenOf(page)).toBeVisible();
    await page.keyboard.press('Escape');
  });

  await test.step('the next opening is the new version', async () => {
    await page.reload();
    await expect.poll(() => versionOf(page)).toBe('next');
    await expect(page.getByRole('heading', { level: 1 })).toContainText('Wicker Road');
  });
  expect(pocket.complaints).toEqual([]);
  await crew.context.close();
  await pocket.throwAway();
  await link.close();
});
