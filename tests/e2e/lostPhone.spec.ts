import { expect, test, type Page } from '@playwright/test';
import { signInOf } from '../support/demo.ts';
import { signIn } from './support/people.ts';

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

test('a lost phone is cut off by the owner: it shows and keeps nothing, and whoever finds it signs in again as on another phone', async ({ browser }) => {
  const crew = await signIn(browser, 'crew');
  const { page } = crew;
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('What needs you next');
  expect(await kept(page, 'devices', 'a phone')).toBe(1);
  await expect.poll(() => kept(page, 'answers')).toBeGreaterThan(0);

  const owner = await signIn(browser, 'owner');
  await owner.page.goto('/company');
  // The newest stand first.
  await owner.page.getByRole('button', { name: 'Cut off the phone of Rosa Delgado' }).first().click();
  await owner.page.getByRole('dialog').getByRole('button', { name: 'It is lost: cut it off' }).click();
  await expect(owner.page.getByRole('dialog')).toBeHidden();

  await page.reload();
  await expect(page.getByText('The owner has cut this phone off')).toBeVisible();
  await expect(page.getByRole('heading', { name: 'On this job' })).toBeHidden();
  await expect.poll(async () => [await kept(page, 'answers'), await kept(page, 'devices')]).toEqual([0, 0]);

  const { email, password } = signInOf(process.env.E2E_DATA_DIR ?? '', 'crew');
  await page.getByRole('link', { name: 'Sign in again' }).click();
  await page.getByLabel('E-mail').fill(email ?? '');
  await page.getByLabel('Password').fill(password ?? '');
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('What needs you next');
  await owner.context.close();
  await crew.context.close();
});
