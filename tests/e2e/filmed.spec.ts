import { expect, test, type Page } from '@playwright/test';
import type { Checklist, Job, Photo } from '@yardfall/contracts';
import { video } from '../support/media.ts';
import { jpeg } from './support/crew.ts';
import { screenOf } from './support/crewDay.ts';
import { part } from './support/office.ts';
import { api, signIn } from './support/people.ts';
import { readyForTheYard } from './support/ready.ts';
import { readyJob } from './support/readyJob.ts';

test('the hose test is filmed without a signal; the film holds up nothing, waits for a word, and arrives once', async ({ browser }) => {
  test.setTimeout(300_000);
  const jobId = await readyJob(browser, `Filmed ${String(Date.now() % 100_000)}`);
  const crew = await signIn(browser, 'crew');
  const { page } = crew;
  const film = video('isom', 3_000_000);
  const photos = async () => (await api<{ readonly items: readonly Photo[] }>(crew, 'GET', `/jobs/${jobId}/photos`)).body.items;
  const step = async () => (await api<Checklist>(crew, 'GET', `/jobs/${jobId}/checklist`)).body.items.find(({ template }) => template === 'J4');
  const key = (await step())?.key ?? '';
  await page.goto(`/jobs/${jobId}`);
  await readyForTheYard(page, jobId);
  await crew.context.setOffline(true);
  const work = await part(page, 'Work');
  await page.locator(`.item-row[data-item="${key}"]`).click();
  // The first of the steps that are seen together.
  const screen = screenOf(page).locator('.photo-evidence').first();
  await expect(screen.getByText(/^Up to 100 MB, about a minute/)).toBeVisible();
  await screen.getByLabel('Or film it').setInputFiles({ name: 'hose.mp4', mimeType: 'video/mp4', buffer: film });
  await expect(screen.getByText(/^Photos: 1 of 1/)).toBeVisible();
  await expect(screen.locator('video')).toBeVisible();
  await expect(screen.getByText(/^On this phone\. It waits for Wi-Fi/)).toBeVisible();

  await test.step('what is recorded after it goes before it', async () => {
    await page.keyboard.press('Escape');
    await work.getByLabel('Photo of the site').setInputFiles({ name: 'after.jpg', mimeType: 'image/jpeg', buffer: await jpeg() });
    await crew.context.setOffline(false);
    await expect.poll(async () => (await photos()).map(({ mediaType }) => mediaType), { timeout: 60_000 }).toEqual(['image/jpeg']);
    await expect(page.getByRole('complementary', { name: 'On this phone' })).toContainText('1 video waits for Wi-Fi');
  });
  await test.step('it is still there after the page was closed, and goes when somebody says so', async () => {
    await page.goto('/waits');
    await expect(page.getByText('It waits for Wi-Fi')).toBeVisible();
    expect((await step())?.facts).toEqual([]);
    await page.getByRole('button', { name: 'Send it now (3 MB)' }).click();
    await expect.poll(async () => (await step())?.facts.map(({ fact, verdict }) => [fact.kind, verdict]), { timeout: 60_000 }).toEqual([['photo', 'kept']]);
    await expect(page.getByText('Nothing waits')).toBeVisible();
  });
  const films = (await photos()).filter(({ mediaType }) => mediaType === 'video/mp4');
  expect(films).toMatchObject([{ bytes: film.length, itemKey: key, ready: true }]);
  expect(crew.complaints).toEqual([]);
  await crew.context.close();

  const office = await signIn(browser, 'estimator');
  const job = (await api<Job>(office, 'GET', `/jobs/${jobId}`)).body;
  await office.page.goto(`/jobs/${job.id}`);
  const there = await part(office.page, 'Work');
  await expect(there.locator('.gallery video')).toHaveAttribute('src', new RegExp(`/photos/${films[0]?.id ?? ''}/original`));
  await office.page.locator(`.item-row[data-item="${key}"]`).click();
  await expect(screenOf(office.page).locator('video').first()).toBeVisible();
  await office.context.close();
});

/** A second of a moving square, as this browser records it. */
async function recorded(page: Page): Promise<Buffer> {
  const bytes = await page.evaluate(async () => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [640, 480];
    const pen = canvas.getContext('2d');
    const recorder = new MediaRecorder(canvas.captureStream(20), { mimeType: 'video/webm' });
    const parts: Blob[] = [];
    recorder.addEventListener('dataavailable', ({ data }) => parts.push(data));
    recorder.start();
    for (let at = 0; at < 20 && pen !== null; at += 1) {
      pen.fillStyle = '#3a6a8a';
      pen.fillRect(0, 0, 640, 480);
      pen.fillStyle = '#ffffff';
      pen.fillRect(100 + at * 10, 200, 80, 80);
      await new Promise((resolve) => { setTimeout(resolve, 50); });
    }
    const stopped = new Promise((resolve) => { recorder.addEventListener('stop', resolve); });
    recorder.stop();
    await stopped;
    return [...new Uint8Array(await new Blob(parts).arrayBuffer())];
  });
  return Buffer.from(bytes);
}

test('a still of the film is in the office while the film waits', async ({ browser }) => {
  test.setTimeout(240_000);
  const jobId = await readyJob(browser, `Still ${String(Date.now() % 100_000)}`);
  const crew = await signIn(browser, 'crew');
  const { page } = crew;
  await page.goto(`/jobs/${jobId}`);
  await part(page, 'Work');
  await page.locator('.item-row[data-item="J4"]').click();
  const screen = screenOf(page).locator('.photo-evidence').first();
  await screen.getByLabel('Or film it').setInputFiles({ name: 'hose.webm', mimeType: 'video/webm', buffer: await recorded(page) });
  await expect(screen.getByText(/^Photos: 1 of 1/)).toBeVisible();
  const photos = async () => (await api<{ readonly items: readonly Photo[] }>(crew, 'GET', `/jobs/${jobId}/photos`)).body.items;
  await expect.poll(async () => (await photos()).map(({ mediaType, itemKey, note, width, height }) => [mediaType, itemKey, note, width, height]), { timeout: 60_000 }).toEqual([['image/jpeg', 'J4', 'From the film', 640, 480]]);
  await expect(screen.getByText(/^On this phone\. It waits for Wi-Fi/)).toBeVisible();
  expect(crew.complaints).toEqual([]);
  await crew.context.close();
});
