import { expect, test, type Locator, type Page } from '@playwright/test';
import { photoAsIs, type Job, type Photo } from '@yardfall/contracts';
import { jpeg } from './support/crew.ts';
import { part } from './support/office.ts';
import { api, signIn, type Person } from './support/people.ts';
import { readyForTheYard } from './support/ready.ts';

async function jobOf(person: Person): Promise<Job> {
  const job = (await api<{ readonly items: readonly Job[] }>(person, 'GET', '/jobs?open=true&limit=100')).body.items.find(({ title, buildRevisionId }) => title === 'Wicker Road' && buildRevisionId !== null);
  if (job === undefined) throw new Error('nothing is being built');
  return job;
}

const photosOf = async (person: Person, jobId: string) => (await api<{ readonly items: readonly Photo[] }>(person, 'GET', `/jobs/${jobId}/photos`)).body.items;

/** A stroke over the picture of an open sheet, by shares of its size. */
async function stroke(page: Page, pad: Locator, from: readonly [number, number], to: readonly [number, number]): Promise<void> {
  await expect(pad.locator('svg')).toBeVisible();
  await pad.scrollIntoViewIfNeeded();
  const box = await pad.boundingBox();
  if (box === null) throw new Error('there is no picture to draw over');
  const at = ([x, y]: readonly [number, number]) => [box.x + box.width * x, box.y + box.height * y] as const;
  await page.mouse.move(...at(from));
  await page.mouse.down();
  await page.mouse.move(...at(to), { steps: 4 });
  await page.mouse.up();
}

test('a photo that is kept is drawn on, written to and placed without a signal; all of it arrives once, and the office adds its own beside it', async ({ browser }) => {
  test.setTimeout(240_000);
  const crew = await signIn(browser, 'crew');
  const { page } = crew;
  const job = await jobOf(crew);
  const note = `Runs to post ${String(Date.now())}`;
  await page.goto(`/jobs/${job.id}`);
  await readyForTheYard(page, job.id);
  const before = (await photosOf(crew, job.id)).map(({ id }) => id);
  await crew.context.setOffline(true);
  const work = await part(page, 'Work');
  await work.getByLabel('Photo of the site').setInputFiles({ name: 'yard.jpg', mimeType: 'image/jpeg', buffer: await jpeg() });
  await work.locator('.gallery').getByRole('button', { name: /^Photo of The site/ }).first().click();
  const sheet = page.getByRole('dialog', { name: /^Photo \d+$/ });

  await test.step('marks and a note', async () => {
    await sheet.getByRole('button', { name: 'Draw or write on it' }).click();
    await stroke(page, sheet.locator('.mark-pad'), [0.2, 0.3], [0.6, 0.5]);
    await sheet.getByRole('radio', { name: 'Words' }).check();
    await sheet.getByLabel('The words').fill('crack');
    await stroke(page, sheet.locator('.mark-pad'), [0.5, 0.8], [0.5, 0.8]);
    await sheet.getByLabel('Note').fill(note);
    await sheet.getByRole('button', { name: 'Keep it on the photo' }).click();
    await expect(sheet.locator('.marked svg line')).toHaveCount(1);
    await expect(sheet.locator('.marked svg text')).toHaveText('crack');
    await expect(sheet.getByText(note, { exact: true })).toBeVisible();
  });
  await test.step('the place in the section', async () => {
    await sheet.getByRole('button', { name: 'Say where it is' }).click();
    const pad = sheet.getByRole('button', { name: /^Touch the place in the section/ });
    const box = await pad.boundingBox();
    if (box === null) throw new Error('there is no section');
    await page.mouse.click(box.x + box.width * 0.3, box.y + box.height * 0.5);
    await expect(sheet.getByText(/^At .+ along the section, level /)).toBeVisible();
    await pad.press('ArrowRight');
    await sheet.getByRole('button', { name: 'Keep the place' }).click();
    await expect(sheet.getByText(/, at .+ along the section, level /)).toBeVisible();
    await sheet.getByRole('button', { name: 'Close', exact: true }).click();
  });
  // The pin of the photo opens it, on the section of its photos and on the drawing of the job, without a signal.
  for (const pin of [work.locator('.photo-pin').first(), page.locator('.photo-pin').first()]) {
    await pin.click();
    await expect(page.getByRole('dialog', { name: /^Photo \d+$/ })).toBeVisible();
    await page.keyboard.press('Escape');
  }
  expect(await page.getByRole('complementary', { name: 'On this phone' }).textContent()).toContain('3 entries');

  await crew.context.setOffline(false);
  const sent = async () => (await photosOf(crew, job.id)).filter(({ id }) => !before.includes(id));
  await expect.poll(async () => (await sent())[0]?.additions.length ?? 0, { timeout: 90_000 }).toBe(2);
  const [photo] = await sent();
  if (photo === undefined) throw new Error('it is gone');
  expect(photo).toMatchObject({ marks: [], note: '' });
  const now = photoAsIs(photo, photo.additions);
  expect(now.marks.map(({ kind, words }) => [kind, words])).toEqual([['arrow', ''], ['text', 'crack']]);
  expect(now.note).toBe(note);
  expect(now.point?.station).toBeGreaterThan(0);
  expect(crew.complaints).toEqual([]);
  await crew.context.close();

  const office = await signIn(browser, 'estimator');
  await office.page.goto(`/jobs/${job.id}`);
  const there = await part(office.page, 'Work');
  const thumb = there.locator('.gallery').getByRole('button', { name: note });
  await thumb.scrollIntoViewIfNeeded();
  await expect(thumb.locator('svg.marks line')).toHaveCount(1, { timeout: 60_000 });
  await thumb.click();
  const large = office.page.getByRole('dialog', { name: /^Photo \d+$/ });
  await large.getByRole('button', { name: 'Draw or write on it' }).click();
  await stroke(office.page, large.locator('.mark-pad'), [0.8, 0.2], [0.3, 0.2]);
  await large.getByRole('button', { name: 'Keep it on the photo' }).click();
  await expect(large.locator('.marked svg line')).toHaveCount(2);
  await expect.poll(async () => (await photosOf(office, job.id)).find(({ id }) => id === photo.id)?.additions.map(({ by, marks }) => [by, marks.length]), { timeout: 60_000 })
    .toEqual([['Rosa Delgado', 2], ['Rosa Delgado', 0], ['Theo Marsh', 1]]);
  await expect(large.getByRole('listitem')).toHaveCount(2);
  expect(office.complaints).toEqual([]);
  await office.context.close();
});

test('a photo of the site is one touch from the home, and on this phone without a signal', async ({ browser }) => {
  test.setTimeout(120_000);
  const crew = await signIn(browser, 'crew');
  const { page } = crew;
  const home = page.locator('.this-job');
  const camera = home.getByLabel('Photo of the site');
  await expect(camera).toBeAttached({ timeout: 30_000 });
  const title = await home.locator('.this-job-name').textContent();
  const job = (await api<{ readonly items: readonly Job[] }>(crew, 'GET', '/jobs?open=true&limit=100')).body.items.find((one) => one.title === title);
  if (job === undefined) throw new Error('the home shows no job');
  await readyForTheYard(page, job.id);
  const before = (await photosOf(crew, job.id)).length;
  await crew.context.setOffline(true);
  await camera.setInputFiles({ name: 'gate.jpg', mimeType: 'image/jpeg', buffer: await jpeg() });
  await expect(home.getByText('1 photo kept')).toBeVisible();
  await expect(home.getByText('on this phone', { exact: true })).toBeVisible();
  await crew.context.setOffline(false);
  await expect.poll(async () => (await photosOf(crew, job.id)).length, { timeout: 60_000 }).toBe(before + 1);
  expect(crew.complaints).toEqual([]);
  await crew.context.close();
});
