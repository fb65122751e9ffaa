import { createHash } from 'node:crypto';
import { expect, test, type Browser, type Page } from '@playwright/test';
import type { DayworkEntry, Photo } from '@yardfall/contracts';
import { signInOf } from '../support/demo.ts';
import { faultsOf } from './support/axe.ts';
import { jpeg } from './support/crew.ts';
import { api, signIn } from './support/people.ts';
import { readyForTheYard } from './support/ready.ts';
import { readyJob } from './support/readyJob.ts';

type Store = 'answers' | 'devices';

/** What the page keeps on this phone; `put` leaves something there first. */
const kept = (page: Page, store: Store, put: string | null = null) => page.evaluate(async ({ store: name, put: key }) => {
  const database = await new Promise<IDBDatabase>((done) => {
    const opening = indexedDB.open('yardfall');
    opening.onsuccess = () => done(opening.result);
  });
  const transaction = database.transaction(name, 'readwrite');
  if (key !== null) transaction.objectStore(name).put({ id: key, seq: 1, registered: true }, key);
  const count = await new Promise<number>((done) => {
    const counting = transaction.objectStore(name).count();
    counting.onsuccess = () => done(counting.result);
  });
  database.close();
  return count;
}, { store, put });

/** The owner cuts off the phone on which the crew signed in last. */
async function cutOff(browser: Browser): Promise<void> {
  const owner = await signIn(browser, 'owner');
  await owner.page.goto('/company');
  // The newest stand first.
  await owner.page.getByRole('button', { name: 'Cut off the phone of Rosa Delgado' }).first().click();
  await owner.page.getByRole('dialog').getByRole('button', { name: 'It is lost: cut it off' }).click();
  await expect(owner.page.getByRole('dialog')).toBeHidden();
  await owner.context.close();
}

async function signInAgain(page: Page): Promise<void> {
  const { email, password } = signInOf(process.env.E2E_DATA_DIR ?? '', 'crew');
  await page.getByRole('link', { name: 'Sign in again' }).click();
  await page.getByLabel('E-mail').fill(email ?? '');
  await page.getByLabel('Password').fill(password ?? '');
  await page.getByRole('button', { name: 'Sign in' }).click();
}

test('a lost phone is cut off by the owner: it shows and keeps nothing, and whoever finds it signs in again as on another phone', async ({ browser }) => {
  const crew = await signIn(browser, 'crew');
  const { page } = crew;
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('What needs you next');
  expect(await kept(page, 'devices', 'a phone')).toBe(1);
  await expect.poll(() => kept(page, 'answers')).toBeGreaterThan(0);

  await cutOff(browser);
  await page.reload();
  await expect(page.getByText('The owner has cut this phone off')).toBeVisible();
  await expect(page.getByRole('heading', { name: 'On this job' })).toBeHidden();
  await expect.poll(async () => [await kept(page, 'answers'), await kept(page, 'devices')]).toEqual([0, 0]);

  await signInAgain(page);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('What needs you next');
  await crew.context.close();
});

test('the photo and the hours of a phone that was cut off stay on it, and go to the office without a touch when its person signs in again', async ({ browser }) => {
  test.setTimeout(180_000);
  const jobId = await readyJob(browser, `Found again ${String(Date.now() % 100_000)}`);
  const crew = await signIn(browser, 'crew');
  const { page, context } = crew;
  await page.goto(`/jobs/${jobId}`);
  await readyForTheYard(page, jobId);
  const bytes = await jpeg();
  await context.setOffline(true);
  await page.getByRole('button', { name: 'Start the clock' }).click();
  await page.getByRole('dialog').getByRole('button').nth(1).click();
  await page.getByRole('button', { name: 'Add a photo note' }).click();
  const form = page.getByRole('form', { name: 'Add a photo note' });
  await form.locator('input[type=file]').last().setInputFiles({ name: 'yard.jpg', mimeType: 'image/jpeg', buffer: bytes });
  await form.getByRole('button', { name: 'Keep this photo' }).click();
  await expect(form).toBeHidden();

  await cutOff(browser);
  await context.setOffline(false);
  await page.reload();
  const notice = page.getByRole('alert').filter({ hasText: 'The owner has cut this phone off' });
  await expect(notice.getByText('2 things recorded on it are still here and not in the office.')).toBeVisible();
  await expect(page.getByRole('complementary', { name: 'On this phone' })).toBeHidden();
  await expect(page.getByText('Rosa Delgado')).toHaveCount(0);
  expect(await faultsOf(page)).toEqual([]);

  await signInAgain(page);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('What needs you next');
  const inOffice = async () => {
    const photos = (await api<{ readonly items: readonly Photo[] }>(crew, 'GET', `/jobs/${jobId}/photos`)).body.items;
    const hours = (await api<{ readonly items: readonly { readonly entry: DayworkEntry }[] }>(crew, 'GET', `/jobs/${jobId}/daywork`)).body.items;
    return [photos.map(({ sha256 }) => sha256), hours.map(({ entry }) => entry.kind)];
  };
  await expect.poll(inOffice, { timeout: 60_000 }).toEqual([[createHash('sha256').update(bytes).digest('hex')], ['started']]);
  await page.goto('/waits');
  await expect(page.getByText('Nothing waits')).toBeVisible();
  expect(crew.complaints).toEqual([]);
  await context.close();
});
