import { createHash } from 'node:crypto';
import { expect, test, type Page } from '@playwright/test';
import type { Checklist, Photo } from '@yardfall/contracts';
import { signInOf } from '../support/demo.ts';
import { picture } from '../support/work.ts';
import { BadLink } from './support/badLink.ts';
import { api, openBrowser, phone, type Person } from './support/people.ts';

const sha256 = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

async function signInThrough(person: Person, link: BadLink): Promise<void> {
  const { email, password } = signInOf(process.env.E2E_DATA_DIR ?? '', 'crew');
  const { page } = person;
  await page.goto(`${link.url}/sign-in`);
  await page.getByLabel('E-mail').fill(email ?? '');
  await page.getByLabel('Password').fill(password ?? '');
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(page.getByRole('heading', { level: 1 })).not.toHaveText('Sign in');
}

/** The worker holds the whole app, and the phone has what the day needs. */
async function readyForTheYard(page: Page, jobId: string): Promise<void> {
  await page.evaluate(async () => { await navigator.serviceWorker.ready; });
  await expect.poll(() => page.evaluate((id) => new Promise<boolean>((resolve, reject) => {
    const open = indexedDB.open('yardfall');
    open.onerror = () => reject(open.error ?? new Error('no store'));
    open.onsuccess = () => {
      const keys = open.result.transaction('answers').objectStore('answers').getAllKeys();
      keys.onsuccess = () => {
        open.result.close();
        resolve(['jobs.read', 'checklists.read', 'designs.read', 'surveyFacts.list'].every((what) => keys.result.some((key) => String(key).includes(what) && String(key).includes(id))));
      };
    };
  }), jobId)).toBe(true);
}

const addPhoto = (page: Page, bytes: Buffer, name: string) => page.getByLabel('Take the photo').first().setInputFiles({ name, mimeType: 'image/jpeg', buffer: bytes });

test('a phone without a signal keeps what is recorded, and all of it arrives exactly once over a bad link', async ({ browser, baseURL }) => {
  test.setTimeout(300_000);
  const link = await BadLink.to(baseURL ?? '');
  const person = await openBrowser(browser, phone);
  await signInThrough(person, link);
  const atOffice = <T>(path: string) => person.context.request.get(`${link.url}/api/v1${path}`).then(async (answer) => (await answer.json()) as T);
  const { items } = await atOffice<{ items: { id: string; title: string; buildRevisionId: string | null }[] }>('/jobs?open=true&limit=100');
  const job = items.find(({ title }) => title.includes('Tern Hollow')) ?? items[0];
  if (job === undefined) throw new Error('the crew has no job');
  await person.page.goto(`${link.url}/jobs/${job.id}`);
  await readyForTheYard(person.page, job.id);
  const before = (await atOffice<{ items: Photo[] }>(`/jobs/${job.id}/photos`)).items;

  // No signal: the app is opened anew from the phone alone, with the person it knows.
  await person.context.setOffline(true);
  await person.page.goto(`${link.url}/jobs/${job.id}`);
  await expect(person.page.getByRole('heading', { level: 1 })).toContainText(job.title);
  const pictures = await Promise.all([picture(), picture(), picture()]);
  for (const [index, bytes] of pictures.entries()) {
    await record(person.page, bytes, `yard-${String(index)}.jpg`);
    await expect(person.page.getByRole('complementary', { name: 'On this phone' })).toContainText(/not yet in the office/);
  }

  // The page is closed, and a new one opened, still without a signal: everything is there.
  await person.page.close();
  const page = await person.context.newPage();
  await page.goto(`${link.url}/waits`);
  await expect(page.getByRole('heading', { level: 1, name: 'What waits' })).toBeVisible();
  await expect(page.locator('.waits img')).toHaveCount(3);
  const waiting = await page.locator('.waits > li').count();
  expect(waiting).toBeGreaterThanOrEqual(3);

  // The signal comes back, and is bad.
  link.turnBad(true);
  await person.context.setOffline(false);
  await expect(page.getByText('Nothing waits')).toBeVisible({ timeout: 180_000 });
  for (const fault of ['dropBefore', 'badGateway', 'dropAfter'] as const) expect(link.happened.get(fault) ?? 0, fault).toBeGreaterThan(0);
  link.turnBad(false);

  const after = (await atOffice<{ items: Photo[] }>(`/jobs/${job.id}/photos`)).items.filter(({ id }) => !before.some((one) => one.id === id));
  expect(after.map((photo) => photo.sha256).sort()).toEqual(pictures.map(sha256).sort());
  for (const photo of after) {
    const original = await person.context.request.get(`${link.url}/api/v1/jobs/${job.id}/photos/${photo.id}/original`);
    expect(sha256(await original.body())).toBe(photo.sha256);
  }
  const { items: steps } = (await api<Checklist>(person, 'GET', `/jobs/${job.id}/checklist`)).body;
  const facts = steps.flatMap((item) => item.facts).filter(({ fact }) => fact.kind === 'photo' && after.some(({ id }) => id === fact.photoId));
  expect(new Set(facts.map(({ fact }) => fact.id)).size).toBe(facts.length);
  await person.context.close();
  await link.close();
});
