import { AxeBuilder } from '@axe-core/playwright';
import { expect, test, type Browser, type Page } from '@playwright/test';
import type { Photo, Survey } from '@yardfall/contracts';
import { jobFor } from './support/office.ts';
import { api, phone, signIn, type Person } from './support/people.ts';
import { sitePicture } from './support/plan.ts';
import { anotherVisit, rows, shoot, shots } from './support/yard.ts';

const FOOT = 0.3048;
const standard = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** A visit to a yard without a signal, on a screen of 390 x 844. */
test.describe.serial('in the yard', () => {
  const title = `Yard ${String(Date.now() % 100_000)}`;
  let jobId = '';

  async function onPhone(browser: Browser): Promise<Person> {
    const person = await signIn(browser, 'estimator');
    await person.page.setViewportSize(phone);
    return person;
  }

  test('a job for it', async ({ browser }) => {
    const estimator = await signIn(browser, 'estimator');
    jobId = await jobFor(estimator, title);
    await estimator.context.close();
  });

  test('fourteen shots and three photos without a signal; the page is closed, opened, and everything arrives once', async ({ browser }) => {
    test.setTimeout(360_000);
    const person = await onPhone(browser);
    const { context } = person;
    let page: Page = person.page;
    const pictures = await Promise.all([sitePicture(), sitePicture(), sitePicture()]);

    await test.step('the page is on the phone before the signal goes', async () => {
      await page.goto(`/jobs/${jobId}/yard`);
      await page.evaluate(async () => { await navigator.serviceWorker.ready; });
      await expect(page.getByRole('heading', { level: 1, name: `In the yard: ${title}` })).toBeVisible();
      await expect(page.getByRole('button', { name: 'Begin the book' })).toBeVisible();
      await page.waitForLoadState('networkidle');
      await context.setOffline(true);
    });

    await test.step('the book is shot by thumb', async () => {
      await page.getByRole('button', { name: 'Begin the book' }).click();
      for (const [at, shot] of shots.entries()) {
        await shoot(page, shot);
        await expect(rows(page)).toHaveCount(at + 1);
      }
    });

    await test.step('gravity and the loop are answered in the yard', async () => {
      const verdict = page.locator('.yard-verdict');
      await expect(verdict).toContainText(/Gravity is short by 0\.9\sft to Outlet/);
      await expect(verdict).toContainText(/Book closes, off by 1\/8"/);
      await expect(page.getByText(/The loop closes: 1\/8" off, 1\/8" allowed over 2 set-ups\. You may leave\./)).toBeVisible();
      await expect(page.getByRole('region', { name: 'Fall to each outlet' })).toContainText(/short by 1\.0\sft to Outlet 2|short by 1\sft to Outlet 2/);
    });

    await test.step('three photos join their shots', async () => {
      for (const [at, point] of ['Sill', 'Low spot', 'Collector'].entries()) {
        await rows(page).filter({ hasText: new RegExp(`^${point}`) }).getByRole('button').click();
        await page.getByRole('dialog').locator('input[type=file]').setInputFiles({ name: `${String(at)}.jpg`, mimeType: 'image/jpeg', buffer: pictures[at] ?? Buffer.alloc(0) });
        await expect(page.getByRole('dialog').getByRole('img')).toBeVisible();
        await page.getByRole('dialog').getByRole('button', { name: 'Close', exact: true }).click();
      }
    });

    await test.step('the page is closed and opened again, still without a signal', async () => {
      await page.close();
      page = await context.newPage();
      await page.setViewportSize(phone);
      await page.goto(`/jobs/${jobId}/yard`);
      await expect(rows(page)).toHaveCount(shots.length);
      await expect(rows(page).filter({ hasText: 'on this phone' })).toHaveCount(shots.length);
      await expect(rows(page).filter({ hasText: '1 photo' })).toHaveCount(3);
      await expect(page.locator('.yard-verdict')).toContainText(/Gravity is short by 0\.9\sft to Outlet/);
      const { body } = await api<{ items: Survey[] }>(person, 'GET', `/jobs/${jobId}/surveys`);
      expect(body.items).toEqual([]);
    });

    await test.step('back in reach everything arrives once', async () => {
      await context.setOffline(false);
      await expect(rows(page).filter({ hasText: 'in the office' })).toHaveCount(shots.length, { timeout: 90_000 });
      const { body: { items } } = await api<{ items: Survey[] }>(person, 'GET', `/jobs/${jobId}/surveys`);
      expect(items).toHaveLength(1);
      const [survey] = items;
      expect(survey?.content.levelBook.readings.map(({ point, backsight, intermediate, foresight }) => [point, ((backsight ?? intermediate ?? foresight ?? NaN) / FOOT).toFixed(2)])).toEqual(shots.map(({ point, rod }) => [point, rod]));
      expect((survey?.reduction.misclosure ?? NaN) / FOOT).toBeCloseTo(0.01, 9);
      expect(survey?.reduction.verdict).toBe('closes');
      expect(survey?.reduction.gravity.map(({ outlet, verdict }) => [outlet, verdict])).toEqual([['Outlet', 'short'], ['Outlet 2', 'short']]);
      // Levels are small and go first; the photos follow.
      const notes = async () => (await api<{ items: Photo[] }>(person, 'GET', `/jobs/${jobId}/photos`)).body.items.map(({ note }) => note).sort();
      await expect.poll(notes, { timeout: 90_000 }).toEqual(['Collector', 'Low spot', 'Sill']);
    });
    expect(person.complaints).toEqual([]);
    await context.close();
  });

  test('an odd reading is asked back, a struck one stays, and other keys change nothing that is stored', async ({ browser }) => {
    test.setTimeout(180_000);
    const person = await onPhone(browser);
    const { page } = person;
    await page.goto(`/jobs/${jobId}/yard`);
    await anotherVisit(page);
    await page.getByRole('button', { name: 'Begin the book' }).click();
    await shoot(page, { point: 'Finished floor', rod: '4.52' });
    const card = page.getByRole('region', { name: 'Next shot' });
    const keys = card.getByRole('group', { name: 'Rod reading' });
    const press = async (...names: readonly string[]) => { for (const name of names) await keys.getByRole('button', { name, exact: true }).click(); };
    await press('5', '4');
    await expect(card.getByText(/past the end of a .* rod\. If these are inches, it is 4\.50/)).toBeVisible();
    await expect(card.getByRole('button', { name: 'Keep it' })).toBeDisabled();
    await press('Take back', 'Take back', '9', 'Decimal point', '5', '0');
    await expect(card.getByText(/lower than anything near it/)).toBeVisible();
    await card.getByRole('button', { name: 'It is right, keep it' }).click();
    await rows(page).filter({ hasText: /^Sill/ }).getByRole('button').click();
    await page.getByRole('dialog').getByRole('button', { name: 'Strike it' }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Close', exact: true }).click();
    await expect(rows(page).filter({ hasText: 'struck' })).toContainText('9.50');
    await expect(card.locator('.next-what')).toContainText('Rod on Sill');
    await keys.getByRole('button', { name: /^Rod in/ }).click();
    await press('4', 'ft', '7', '1/8 of an inch');
    await expect(card.getByLabel('Reading', { exact: true })).toHaveValue('4\' 7 1/8"');
    await keys.getByRole('button', { name: /^Rod in/ }).click();
    await card.getByRole('button', { name: 'Keep it' }).click();
    await expect(rows(page)).toHaveCount(3);
    await expect(rows(page).filter({ hasText: 'in the office' })).toHaveCount(3, { timeout: 60_000 });
    const { body: { items } } = await api<{ items: Survey[] }>(person, 'GET', `/jobs/${jobId}/surveys`);
    const readings = items.map(({ content }) => content.levelBook.readings).find((list) => list.length === 2);
    // 4 ft 7 1/8 in are 55.125 in.
    expect((readings?.[1]?.intermediate ?? NaN) / 0.0254).toBeCloseTo(55.125, 9);
    await person.context.close();
  });

  test('by keys alone, and clean for axe in the sun, at night, by thumb and at a desk', async ({ browser }) => {
    test.setTimeout(240_000);
    const person = await onPhone(browser);
    const { page } = person;
    const clean = async (where: string) => {
      const { violations } = await new AxeBuilder({ page }).withTags(standard).analyze();
      expect.soft(violations.flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id} at ${target.join(' ')}`)), where).toEqual([]);
    };
    await page.goto(`/jobs/${jobId}/yard`);
    await anotherVisit(page);
    await clean('before the first shot');
    await page.getByRole('button', { name: 'Begin the book' }).press('Enter');
    await page.getByLabel('Reading', { exact: true }).focus();
    await page.keyboard.type('4.52');
    await page.keyboard.press('Enter');
    await expect(rows(page)).toHaveCount(1);
    for (const scheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme: scheme, reducedMotion: 'reduce' });
      await clean(`levels, ${scheme}`);
    }
    await page.getByRole('button', { name: 'Sun' }).click();
    await clean('levels, sun');
    for (const height of await page.locator('.keypad .key, .yard-tab').evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height))) expect(height).toBeGreaterThanOrEqual(56);
    await page.getByRole('button', { name: 'Why is it wet' }).click();
    await clean('why, first question');
    await page.getByRole('radio', { name: 'No, only with rain' }).press('Space');
    await page.getByRole('button', { name: 'Keep the answer' }).press('Enter');
    await expect(page.getByRole('heading', { name: /When does it come/ })).toBeVisible();
    await clean('why, second question');
    await page.setViewportSize({ width: 1440, height: 900 });
    await page.getByRole('button', { name: 'Levels', exact: true }).click();
    await expect(page.getByRole('table', { name: 'The whole book' })).toBeVisible();
    await clean('at a desk');
    await person.context.close();
  });

  test('a diagnosis names its cause with the test that proved it, and stops where it is not ours', async ({ browser }) => {
    test.setTimeout(180_000);
    const person = await onPhone(browser);
    const { page } = person;
    await page.goto(`/jobs/${jobId}/yard`);
    await anotherVisit(page);
    await page.getByRole('button', { name: 'Why is it wet' }).click();
    const answer = async (question: RegExp, ...picks: readonly string[]) => {
      const form = page.getByRole('form', { name: question });
      for (const pick of picks) await form.getByText(pick, { exact: true }).click();
      await form.getByRole('button', { name: 'Keep the answer' }).click();
    };
    await answer(/dry days/, 'No, only with rain');
    await answer(/When does it come/, 'Within half an hour of hard rain, gone in hours');
    await answer(/smell of sewage/, 'No');
    await answer(/moving or hollow/, 'None of these');
    await answer(/What do you see/, 'Puddle with the same outline each time');
    const causes = page.getByRole('region', { name: 'Causes' });
    await expect(causes).toContainText('suspected');
    await answer(/Which way does the paving fall/, 'Toward the house');
    await expect(causes).toContainText('proven by: Which way does the paving fall?');
    await expect(causes).toContainText('Your patio leans toward the house, so rain has no way out.');
    await page.getByRole('button', { name: /Answer again: Is anything moving or hollow/ }).click();
    await answer(/moving or hollow/, 'None of these', 'A wall that leans');
    await expect(page.getByRole('alert')).toContainText('Stop: this is not ours to design');
    await expect(page.getByRole('alert')).toContainText('licensed engineer');
    await expect(page.getByText('in the office').first()).toBeVisible({ timeout: 60_000 });
    await expect.poll(async () => {
      const { body: { items } } = await api<{ items: Survey[] }>(person, 'GET', `/jobs/${jobId}/surveys`);
      return items.flatMap(({ content }) => content.observations.map(({ kind }) => kind));
    }, { timeout: 60_000 }).toEqual(['leaningWall']);
    await person.context.close();
  });
});
