import { expect, test, type Locator, type Page } from '@playwright/test';
import type { Checklist, DigVerdict, LocateTicket, Photo } from '@yardfall/contracts';
import { BadLink } from './support/badLink.ts';
import { dialogOf, screenOf } from './support/crewDay.ts';
import { jpeg, ListWorker } from './support/crew.ts';
import { part } from './support/office.ts';
import { api, openBrowser, phone, signInThrough, type Person } from './support/people.ts';
import { readyForTheYard } from './support/ready.ts';
import { readyJob } from './support/readyJob.ts';

interface Office {
  readonly items: readonly LocateTicket[];
  readonly verdict: DigVerdict;
}

const inOffice = async (person: Person, jobId: string): Promise<Office> => (await api<Office>(person, 'GET', `/jobs/${jobId}/locate-tickets`)).body;

/** Nothing but the marks keeps this step from being begun. */
async function digStep(crew: Person, jobId: string): Promise<string> {
  await (await ListWorker.of(crew, jobId)).prove(({ template }) => template === 'A2');
  const { items } = (await api<Checklist>(crew, 'GET', `/jobs/${jobId}/checklist`)).body;
  const step = items.find(({ template, heldBy }) => template === 'C5' && heldBy.length === 0);
  if (step === undefined) throw new Error('no step waits for the marks alone');
  return step.key;
}

async function expectHeld(page: Page, key: string, held: boolean): Promise<void> {
  await part(page, 'Work');
  await page.locator(`.item-row[data-item="${key}"]`).click();
  await expect(screenOf(page)).toHaveAttribute('data-item', key);
  await expect(screenOf(page).getByText('First this has to be proven')).toHaveCount(held ? 1 : 0);
  await page.keyboard.press('Escape');
}

/** Marks are gone: with a photo that is taken in the dialog. */
async function marksAreGone(page: Page, locates: Locator): Promise<void> {
  await locates.getByRole('button', { name: 'Something happened ...' }).click();
  const dialog = dialogOf(page);
  await dialog.getByRole('radio', { name: 'Marks are gone' }).check({ force: true });
  await dialog.locator('input[type=file]').setInputFiles({ name: 'marks.jpg', mimeType: 'image/jpeg', buffer: await jpeg() });
  await expect(dialog.getByText('on this phone', { exact: true })).toBeVisible();
  await dialog.getByRole('button', { name: 'Put it on record' }).click();
  await expect(dialog).toBeHidden();
}

async function answered(page: Page, locates: Locator, utility: string, answer: string): Promise<void> {
  await locates.getByRole('button', { name: `Change the answer of ${utility}` }).click();
  await dialogOf(page).getByRole('radio', { name: answer, exact: true }).check({ force: true });
  await dialogOf(page).getByRole('button', { name: 'Record the answer' }).click();
  await expect(dialogOf(page)).toBeHidden();
}

/** A post of a utility that the center did not name. */
async function addFiber(page: Page, locates: Locator): Promise<void> {
  await locates.getByRole('button', { name: 'A utility is missing here ...' }).click();
  const dialog = dialogOf(page);
  await dialog.getByRole('radio', { name: 'Another' }).check({ force: true });
  await dialog.getByLabel('Its name').fill('power');
  await dialog.getByRole('button', { name: 'Add it; it has not answered' }).click();
  await expect(dialog.getByText('Power stands on this ticket already.')).toBeVisible();
  await dialog.getByLabel('Its name').fill('Fiber');
  await dialog.getByRole('button', { name: 'Add it; it has not answered' }).click();
  await expect(dialog).toBeHidden();
}

test('marks that go and what a utility answers without a signal count on the phone at once to the safe side, and are sent exactly once', async ({ browser, baseURL }) => {
  test.setTimeout(300_000);
  const jobId = await readyJob(browser, `Lost marks ${String(Date.now() % 100_000)}`);
  const link = await BadLink.to(baseURL ?? '');
  const crew = await openBrowser(browser, phone);
  const { page, context } = crew;
  await signInThrough(crew, link.url, 'crew');
  const step = await digStep(crew, jobId);
  const photosOf = async () => (await api<{ readonly items: readonly Photo[] }>(crew, 'GET', `/jobs/${jobId}/photos`)).body.items;
  const before = (await photosOf()).length;
  await page.goto(`${link.url}/jobs/${jobId}#locates`);
  const locates = await part(page, 'Locates');
  await expect(locates.locator('.may-dig')).toBeVisible();
  await expectHeld(page, step, false);
  await readyForTheYard(page, jobId);

  await test.step('without a signal', async () => {
    link.turnDead(true);
    await context.setOffline(true);
    await answered(page, locates, 'Power', 'Clear');
    await expect(locates.locator('.may-dig')).toHaveCount(0);
    await expect(locates.getByText(/what Power answered is on this phone; it clears nothing until the office has it/)).toBeVisible();
    await expect(locates.getByText('It lets nobody dig until the office has it.')).toBeVisible();
    await addFiber(page, locates);
    await expect(locates.getByText(/Fiber/).first()).toBeVisible();
    await expect(locates.getByText(/no answer from Fiber/).first()).toBeVisible();
    await marksAreGone(page, locates);
    await expect(locates.getByText(/marks are gone since/)).toBeVisible();
    await expect(locates.getByText('Nothing is dug from now on'), 'of the utility, and of the marks').toHaveCount(2);
    await expectHeld(page, step, true);
  });
  await test.step('the page is opened anew', async () => {
    await page.reload();
    await expect((await part(page, 'Locates')).getByText(/marks are gone since/)).toBeVisible();
    await expect(page.locator('.may-dig')).toHaveCount(0);
    await expectHeld(page, step, true);
    await page.goto(`${link.url}/waits`);
    await expect(page.locator('.waits > li')).toHaveText([/^Locate ticket · Power: Clear/, /^Locate ticket · Fiber: Nothing heard yet/, /^Photo/, /^Locate ticket · Marks are gone/]);
    expect((await inOffice(crew, jobId)).verdict.mayDig, 'the office knows nothing yet').toBe(true);
  });
  await test.step('each is sent once, though every second answer is lost and every other comes twice', async () => {
    await context.setOffline(false);
    link.turnBad(true, ['dropAfter', 'twice']);
    link.turnDead(false);
    await expect(page.getByText('Nothing waits')).toBeVisible({ timeout: 90_000 });
    for (const fault of ['dropAfter', 'twice'] as const) expect(link.happened.get(fault) ?? 0, fault).toBeGreaterThan(1);
    const { items: [ticket], verdict } = await inOffice(crew, jobId);
    expect(verdict.mayDig).toBe(false);
    expect(ticket?.events.map(({ kind }) => kind)).toEqual(['marksAgree', 'marksDestroyed']);
    expect(ticket?.responses.filter(({ utility }) => utility === 'Power').map(({ answer }) => answer)).toEqual(['none', 'marked', 'clear']);
    expect(ticket?.responses.filter(({ utility }) => utility === 'Fiber').map(({ answer }) => answer)).toEqual(['none']);
    const photos = await photosOf();
    expect(photos.length).toBe(before + 1);
    expect(photos.map(({ id }) => id)).toContain(ticket?.events[1]?.photoId);
  });
  await test.step('the phone shows what the office has', async () => {
    await page.goto(`${link.url}/jobs/${jobId}#locates`);
    const after = await part(page, 'Locates');
    await expect(after.getByText(/marks are gone since/)).toBeVisible();
    await expect(after.getByText('Nothing is dug from now on')).toHaveCount(0);
    await expectHeld(page, step, true);
  });
  expect(crew.complaints).toEqual([]);
  await context.close();
  await link.close();
});
