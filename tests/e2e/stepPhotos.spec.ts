import { expect, test, type Locator, type Page } from '@playwright/test';
import type { Checklist, ChecklistItem, Job } from '@yardfall/contracts';
import sharp from 'sharp';
import { CHROMIUM_ARGS, findChromium } from '../../tools/chromium.mjs';
import { heicPicture } from '../support/media.ts';
import { jpeg, ListWorker } from './support/crew.ts';
import { screenOf } from './support/crewDay.ts';
import { part } from './support/office.ts';
import { api, signIn, type Person } from './support/people.ts';

const executablePath = findChromium();
// A camera that draws its own pictures, and asks nobody; a trace would ask for the pictures itself.
test.use({ trace: 'off', launchOptions: { ...(executablePath === undefined ? {} : { executablePath }), args: [...CHROMIUM_ARGS, '--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream'] } });

async function theJob(person: Person): Promise<{ readonly id: string; readonly items: readonly ChecklistItem[] }> {
  const job = (await api<{ readonly items: readonly Job[] }>(person, 'GET', '/jobs?open=true&limit=100')).body.items.find(({ title, buildRevisionId }) => title === 'Wicker Road' && buildRevisionId !== null);
  if (job === undefined) throw new Error('the crew has no job');
  await (await ListWorker.of(person, job.id)).prove(({ template }) => ['B2', 'C5'].includes(template));
  await person.page.goto(`/jobs/${job.id}`);
  await part(person.page, 'Work');
  return { id: job.id, items: (await api<Checklist>(person, 'GET', `/jobs/${job.id}/checklist`)).body.items };
}

/** A step that nobody has begun, opened. */
async function open(page: Page, items: readonly ChecklistItem[], template: string): Promise<Locator> {
  const step = items.findLast((item) => item.template === template && item.heldBy.length === 0 && item.facts.length === 0);
  if (step === undefined) throw new Error(`no ${template} is left`);
  await page.locator(`.item-row[data-item="${step.key}"]`).click();
  await expect(screenOf(page)).toHaveAttribute('data-item', step.key);
  return screenOf(page);
}

const blurred = () => sharp({ create: { width: 400, height: 300, channels: 3, background: '#7a6a50' } }).jpeg().toBuffer();
const file = (name: string, buffer: Buffer, mimeType = 'image/jpeg') => ({ name, mimeType, buffer });

test('photos of a step: several at once, HEIC, a doubtful one that is asked about once, and a camera that stays open', async ({ browser }) => {
  test.setTimeout(180_000);
  const crew = await signIn(browser, 'crew');
  const { items } = await theJob(crew);
  const screen = await open(crew.page, items, 'B1');
  const [camera, store] = [screen.locator('.photo-evidence input[type=file]').first(), screen.locator('.photo-evidence input[type=file]').nth(1)];
  const count = (n: number) => expect(screen.getByText(`Photos: ${String(n)} of 12`)).toBeVisible({ timeout: 30_000 });
  await test.step('three from the store', async () => {
    await store.setInputFiles([file('1.jpg', await jpeg()), file('2.jpg', await jpeg()), file('3.HEIC', heicPicture(), '')]);
    await count(3);
  });
  await test.step('a doubtful one does not count until the crew keeps it, and one that is left out leaves nothing', async () => {
    await camera.setInputFiles(file('dark.jpg', await blurred()));
    await expect(screen.getByText('This photo may be blurred')).toBeVisible();
    await expect(screen.getByText('This photo is small')).toBeVisible();
    await count(3);
    await screen.getByRole('button', { name: 'Keep it' }).click();
    await count(4);
    await expect(screen.getByText('This photo may be blurred')).toBeHidden();
    await camera.setInputFiles(file('dark2.jpg', await blurred()));
    await screen.getByRole('button', { name: 'Leave it out' }).click();
    await expect(screen.getByText('This photo may be blurred')).toBeHidden();
    await count(4);
  });
  await test.step('two more from a camera that stays open', async () => {
    await screen.getByRole('button', { name: 'Take several in a row' }).click();
    const finder = crew.page.getByRole('dialog', { name: /^Photos: / });
    const shutter = finder.getByRole('button', { name: 'Take it' });
    for (let n = 0; n < 2; n += 1) {
      await shutter.click();
      await expect(shutter).toBeEnabled();
    }
    await finder.getByRole('button', { name: 'Close', exact: true }).click();
    // What the drawn camera gives may be soft: then it is asked about, and kept.
    await expect(screen.getByText('Looking at the photo')).toBeHidden({ timeout: 30_000 });
    const keep = screen.getByRole('button', { name: 'Keep it' });
    for (let left = await keep.count(); left > 0; left -= 1) {
      await keep.first().click();
      await expect(keep).toHaveCount(left - 1);
    }
    await count(6);
  });
  await expect(screen.locator('.needs')).toContainText('6 photos: Each face wide, each crack close');
  expect(crew.complaints).toEqual([]);
  await crew.context.close();
});

test('one photo proves another step only when somebody says that it shows it', async ({ browser }) => {
  test.setTimeout(120_000);
  const crew = await signIn(browser, 'crew');
  const { id, items } = await theJob(crew);
  const screen = await open(crew.page, items, 'E2');
  await expect(screen.getByRole('checkbox', { checked: true })).toHaveCount(0);
  await screen.locator('.photo-evidence input[type=file]').first().setInputFiles(file('trench.jpg', await jpeg()));
  await expect(screen.locator('.photo-evidence').first().getByText(/^Photos: 1 of \d/)).toBeVisible();
  const other = screen.locator('.together').first();
  await expect(other.getByText(/^Photos: 0 of \d/)).toBeVisible();
  const key = (await other.getAttribute('data-item')) ?? '';
  expect(key).toMatch(/^E3/);
  await screen.getByRole('button', { name: 'The last photo also shows: Each fitting' }).click();
  await expect(other.getByText(/^Photos: 1 of \d/)).toBeVisible();
  // One picture, on record for both steps.
  await expect.poll(async () => {
    const { body } = await api<Checklist>(crew, 'GET', `/jobs/${id}/checklist`);
    const shown = (template: string) => body.items.filter((item) => item.template === template).flatMap(({ facts }) => facts.flatMap(({ fact }) => (fact.kind === 'photo' ? [fact.photoId] : [])));
    return shown('E3').length > 0 && shown('E3').every((photo) => shown('E2').includes(photo));
  }, { timeout: 60_000 }).toBe(true);
  expect(crew.complaints).toEqual([]);
  await crew.context.close();
});
