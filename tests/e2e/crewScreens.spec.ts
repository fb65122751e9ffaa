import { AxeBuilder } from '@axe-core/playwright';
import { expect, test, type Page } from '@playwright/test';
import type { Checklist, FoundReport, Job } from '@yardfall/contracts';
import { faultsOf } from './support/axe.ts';
import { ListWorker } from './support/crew.ts';
import { dialogOf, screenOf } from './support/crewDay.ts';
import { part } from './support/office.ts';
import { api, signIn, type Person } from './support/people.ts';

/** One of each kind of evidence: inverts of a pipe, photo with figure and signature, a held step, a photo alone, figures alone. */
const templates = ['E1', 'J4', 'E5', 'C5', 'G5'];
/** For a gloved thumb [CSS pixels]; ours. */
const thumb = 56;

/** What is pressed and is smaller than a gloved thumb; a label that holds its control counts for it, and a link in a sentence is text. */
function small(page: Page, within: string): Promise<string[]> {
  return page.locator(`${within} :is(button, input, select, textarea, summary, a)`).evaluateAll((all, least) => all.flatMap((one) => {
    const target = one.closest('label') ?? one;
    const { height, width } = target.getBoundingClientRect();
    const isText = one.tagName === 'A' && getComputedStyle(one).display === 'inline';
    return height === 0 || isText || (height >= least && width >= least) ? [] : [`${one.tagName} "${(one.textContent ?? '').slice(0, 30)}" ${String(Math.round(width))} x ${String(Math.round(height))}`];
  }), thumb);
}

/** Contrast of 7:1, and 4.5:1 for large text (WCAG 2.2, success criterion 1.4.6). */
async function pale(page: Page, within: string): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).include(within).withRules(['color-contrast-enhanced']).analyze();
  return violations.flatMap(({ nodes }) => nodes.map(({ target, failureSummary }) => `${target.join(' ')}: ${failureSummary ?? ''}`));
}

async function theCrewsJob(person: Person): Promise<{ readonly id: string; readonly keys: readonly string[] }> {
  const job = (await api<{ readonly items: readonly Job[] }>(person, 'GET', '/jobs?open=true&limit=100')).body.items.find(({ title, buildRevisionId }) => title === 'Wicker Road' && buildRevisionId !== null);
  if (job === undefined) throw new Error('the crew has no job');
  // Nothing is shot before the bench mark is, and before somebody has looked at the trench.
  await (await ListWorker.of(person, job.id)).prove(({ template }) => ['B2', 'C5'].includes(template));
  const { items } = (await api<Checklist>(person, 'GET', `/jobs/${job.id}/checklist`)).body;
  return { id: job.id, keys: templates.flatMap((template) => items.find((item) => item.template === template && item.state !== 'failed')?.key ?? []) };
}

async function openStep(page: Page, key: string): Promise<void> {
  await page.locator(`.item-row[data-item="${key}"]`).click();
  await expect(screenOf(page)).toHaveAttribute('data-item', key);
  if (key.startsWith('E1')) await expect(screenOf(page).locator('.shots')).toBeVisible({ timeout: 60_000 });
}

test('each kind of step is for a gloved thumb, stands out 7:1 by day, by night and in the sun, and has no fault that a program can find', async ({ browser }) => {
  test.setTimeout(300_000);
  const crew = await signIn(browser, 'crew');
  const { page, context } = crew;
  const { id, keys } = await theCrewsJob(crew);
  expect(keys).toHaveLength(templates.length);
  await page.goto(`/jobs/${id}`);
  await part(page, 'Work');
  for (const key of keys) {
    await openStep(page, key);
    expect.soft(await small(page, 'dialog[open]'), key).toEqual([]);
    expect.soft(await faultsOf(page, { within: 'dialog[open]' }), key).toEqual([]);
    await page.keyboard.press('Escape');
  }
  await page.getByRole('button', { name: 'Stop work and say what we found' }).first().click();
  expect.soft(await small(page, 'dialog[open]'), 'what was found').toEqual([]);
  await dialogOf(page).getByRole('button', { name: 'A pipe in the way' }).click();
  await expect(dialogOf(page).getByText('on this phone').or(dialogOf(page).getByText('in the office')).first()).toBeVisible();
  expect.soft(await small(page, 'dialog[open]'), 'a pipe in the way').toEqual([]);
  expect.soft(await faultsOf(page, { within: 'dialog[open]' }), 'a pipe in the way').toEqual([]);
  await page.keyboard.press('Escape');
  for (const look of ['light', 'dark', 'sun'] as const) {
    await page.emulateMedia({ colorScheme: look === 'dark' ? 'dark' : 'light', reducedMotion: 'reduce' });
    if (look === 'sun') await page.getByRole('button', { name: 'Sun', exact: true }).click();
    expect.soft(await pale(page, '.crew-top'), `top of the job, ${look}`).toEqual([]);
    for (const key of keys) {
      await openStep(page, key);
      expect.soft(await pale(page, 'dialog[open]'), `${key}, ${look}`).toEqual([]);
      await page.keyboard.press('Escape');
    }
  }
  await expect(page.locator('html')).toHaveAttribute('data-sun', 'on');
  await page.reload();
  await expect(page.locator('html')).toHaveAttribute('data-sun', 'on');
  // The next test finds the job at work.
  const office = await signIn(browser, 'estimator');
  for (const { id: reportId, status } of (await api<{ readonly items: readonly FoundReport[] }>(office, 'GET', `/jobs/${id}/found`)).body.items) {
    if (status === 'open') await api(office, 'POST', `/jobs/${id}/found/${reportId}/answer`, { answer: 'Go on.' });
  }
  await office.context.close();
  await context.close();
});

test('all that is pressed on the pages of the crew is for a gloved thumb', async ({ browser }) => {
  test.setTimeout(180_000);
  const crew = await signIn(browser, 'crew');
  const { page, context } = crew;
  const { id } = await theCrewsJob(crew);
  await expect(page.getByRole('button', { name: 'Material or delivery' })).toBeVisible({ timeout: 30_000 });
  expect.soft(await small(page, 'body'), 'home').toEqual([]);
  await page.getByRole('button', { name: 'Material or delivery' }).click();
  await expect(dialogOf(page).locator('.goods-pick button').nth(3)).toBeVisible();
  expect.soft(await small(page, 'dialog[open]'), 'materials of the design').toEqual([]);
  // A delivery is a tap on the material, a press more, and the note: nothing is typed.
  await dialogOf(page).getByRole('radio', { name: 'Delivered' }).check({ force: true });
  await dialogOf(page).locator('.goods-pick button').first().click();
  const amount = dialogOf(page).getByLabel('How much');
  const designed = Number(await amount.inputValue());
  expect(designed).toBeGreaterThan(0);
  await dialogOf(page).getByRole('button', { name: 'More' }).click();
  expect(Number(await amount.inputValue())).toBeGreaterThan(designed);
  expect.soft(await small(page, 'dialog[open]'), 'amount').toEqual([]);
  await dialogOf(page).getByRole('button', { name: 'Note it' }).click();
  await expect(dialogOf(page)).toBeHidden();
  for (const path of [`/jobs/${id}`, '/waits']) {
    await page.goto(path);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    if (path !== '/waits') for (const heading of ['Locates', 'Permits', 'Work']) await (await part(page, heading)).locator('p, table').first().waitFor();
    expect.soft(await small(page, 'body'), path).toEqual([]);
  }
  expect(crew.complaints).toEqual([]);
  await context.close();
});

test('each kind of step is all in Spanish for who reads it', async ({ browser }) => {
  test.setTimeout(180_000);
  const crew = await signIn(browser, 'crew');
  const { page, context } = crew;
  const { id, keys } = await theCrewsJob(crew);
  const speak = (language: 'en' | 'es') => context.request.patch('/api/v1/session/preferences', { data: { language }, headers: { 'idempotency-key': crypto.randomUUID() } });
  const said = async (): Promise<string[]> => {
    await page.goto(`/jobs/${id}`);
    await page.locator('.item-row').first().or(page.getByRole('button', { name: /^(Work|Trabajo|Obra)$/ })).first().waitFor();
    const all: string[] = [];
    for (const key of keys) {
      await openStep(page, key);
      all.push(...(await screenOf(page).evaluate((screen) => {
        const walk = document.createTreeWalker(screen, NodeFilter.SHOW_TEXT);
        const texts: string[] = [];
        while (walk.nextNode()) texts.push((walk.currentNode.textContent ?? '').trim());
        return texts;
      })));
      await page.keyboard.press('Escape');
    }
    return all.filter((text) => /\p{L}{4}/u.test(text));
  };
  const english = await said();
  expect((await speak('es')).ok()).toBe(true);
  try {
    const spanish = await said();
    expect(spanish.length).toBeGreaterThan(40);
    const names = (await api<Checklist>(crew, 'GET', `/jobs/${id}/checklist`)).body.items.flatMap(({ partName }) => (partName === null ? [] : [partName]));
    // Names of parts are the office's own words.
    expect(spanish.filter((text) => english.includes(text) && !names.some((name) => text.includes(name)))).toEqual([]);
  } finally {
    expect((await speak('en')).ok()).toBe(true);
  }
  await context.close();
});
