import { createHash } from 'node:crypto';
import { expect, test, type Page } from '@playwright/test';
import { itemText, type Checklist, type ChecklistItem, type Photo } from '@yardfall/contracts';
import { render } from '@yardfall/text';
import { heavyPicture } from '../support/media.ts';
import { BadLink } from './support/badLink.ts';
import { jpeg } from './support/crew.ts';
import { part } from './support/office.ts';
import { openBrowser, phone, signInThrough } from './support/people.ts';
import { readyForTheYard } from './support/ready.ts';

const sha256 = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

async function record(page: Page, bytes: Buffer, name: string): Promise<void> {
  await page.getByRole('button', { name: 'Add a photo note' }).click();
  const form = page.getByRole('form', { name: 'Add a photo note' });
  await form.locator('input[type=file]').last().setInputFiles({ name, mimeType: 'image/jpeg', buffer: bytes });
  await form.getByLabel('Note').fill(name);
  await form.getByRole('button', { name: 'Keep this photo' }).click();
  await expect(form).toBeHidden();
}

/** A step that a photo and one touch prove, and that nothing holds. */
function isOpenTick({ missing, heldBy, requirement: { signers } }: ChecklistItem): boolean {
  return heldBy.length === 0 && missing.length === 2 && missing.includes('tick') && missing.includes('photo:1') && !signers.includes('owner');
}

function wordsOf({ requirement }: ChecklistItem): RegExp {
  const words = render('en', 'us', itemText(requirement, 'what') as Parameters<typeof render>[2], requirement.params);
  return new RegExp(`^${words.slice(0, 30).replace(/[.*+?^${}()|[\]\\]/g, '\\$&')}`);
}

test('a phone without a signal keeps what is recorded, and all of it arrives exactly once over a bad link', async ({ browser, baseURL }) => {
  test.setTimeout(300_000);
  const link = await BadLink.to(baseURL ?? '');
  const person = await openBrowser(browser, phone);
  await signInThrough(person, link.url, 'crew');
  const atOffice = <T>(path: string) => person.context.request.get(`${link.url}/api/v1${path}`).then(async (answer) => (await answer.json()) as T);
  const { items } = await atOffice<{ items: { id: string; title: string; buildRevisionId: string | null }[] }>('/jobs?open=true&limit=100');
  const job = items.find(({ buildRevisionId }) => buildRevisionId !== null);
  if (job === undefined) throw new Error('the crew has no job that is being built');
  await person.page.goto(`${link.url}/jobs/${job.id}`);
  await readyForTheYard(person.page, job.id);
  const before = (await atOffice<{ items: Photo[] }>(`/jobs/${job.id}/photos`)).items;

  const checklist = () => atOffice<Checklist>(`/jobs/${job.id}/checklist`);
  const steps = (await checklist()).items.filter(isOpenTick).slice(0, 2);
  expect(steps).toHaveLength(2);

  // No signal: the app is opened anew from the phone alone, with the person it knows.
  await person.context.setOffline(true);
  await person.page.goto(`${link.url}/jobs/${job.id}`);
  await expect(person.page.getByRole('heading', { level: 1 })).toContainText(job.title);
  const work = await part(person.page, 'Work');
  // One of them is as heavy as a phone's: it goes in pieces, each of which meets the bad link.
  const pictures = await Promise.all([jpeg(), heavyPicture(1600, 1200), jpeg()]);
  for (const [index, bytes] of pictures.entries()) {
    await record(person.page, bytes, `yard-${String(index)}.jpg`);
    await expect(person.page.getByRole('complementary', { name: 'On this phone' })).toContainText(/not yet in the office/);
  }

  for (const step of steps) {
    await work.getByRole('button', { name: wordsOf(step) }).first().click();
    const screen = person.page.getByRole('dialog').locator('.item-screen');
    const shown = await jpeg();
    pictures.push(shown);
    await screen.locator('input[type=file]').first().setInputFiles({ name: 'step.jpg', mimeType: 'image/jpeg', buffer: shown });
    await screen.locator(':scope > .finish').getByRole('button', { name: 'Done', exact: true }).click();
    await expect(screen.getByText('Done and on record').first()).toBeVisible();
    await person.page.keyboard.press('Escape');
  }

  // The page is closed, and a new one opened, still without a signal: everything is there.
  await person.page.close();
  const page = await person.context.newPage();
  await page.goto(`${link.url}/waits`);
  await expect(page.getByRole('heading', { level: 1, name: 'What waits' })).toBeVisible();
  await expect(page.locator('.waits img')).toHaveCount(5);
  await expect(page.locator('.waits > li')).toHaveCount(9);

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
  const facts = (await checklist()).items.filter(({ key }) => steps.some((step) => step.key === key)).map((item) => item.facts.length - (steps.find(({ key }) => key === item.key)?.facts.length ?? 0));
  expect(facts).toEqual([2, 2]);
  expect(person.complaints).toEqual([]);
  await person.context.close();
  await link.close();
});
