import { expect, test, type Page } from '@playwright/test';
import type { DigVerdict, FoundReport, Job, LocateTicket } from '@yardfall/contracts';
import { jpeg } from './support/crew.ts';
import { dialogOf } from './support/crewDay.ts';
import { part } from './support/office.ts';
import { api, signIn, type Person } from './support/people.ts';
import { readyForTheYard } from './support/ready.ts';
import { done, readyJob } from './support/readyJob.ts';

const stopped = (page: Page) => page.getByRole('region', { name: 'Work is stopped' }).first();
const reports = async (person: Person, jobId: string) => (await api<{ items: FoundReport[] }>(person, 'GET', `/jobs/${jobId}/found`)).body.items;

/** Opened anew, so that the wait for the stream begins before the page asks for it; a page that never listens fails here. */
async function untilItListens(page: Page): Promise<void> {
  const stream = page.waitForResponse((answer) => new URL(answer.url()).pathname === '/api/v1/events', { timeout: 60_000 });
  await page.reload();
  const answer = await stream;
  expect([answer.status(), answer.headers()['content-type']]).toEqual([200, expect.stringContaining('text/event-stream')]);
}

/** So that the next test finds the job at work. */
async function answerAll(office: Person, jobId: string): Promise<void> {
  for (const { id, status } of await reports(office, jobId)) if (status === 'open') await done(office, 'POST', `/jobs/${jobId}/found/${id}/answer`, { answer: 'Go on beside it.' });
}

test('two taps stop the work on a phone without a signal, from the home; the page dies, and what is added later arrives with it', async ({ browser }) => {
  test.setTimeout(240_000);
  const crew = await signIn(browser, 'crew');
  const { page, context } = crew;
  await page.getByRole('link', { name: 'Open the whole job' }).click();
  await expect(page.locator('.job-block')).toBeVisible();
  const jobId = /jobs\/([^/#?]+)/.exec(page.url())?.[1] ?? '';
  await readyForTheYard(page, jobId);
  const before = (await reports(crew, jobId)).length;
  await page.goto('/');
  await expect(page.getByRole('button', { name: /^Stop work/ })).toBeVisible();
  await context.setOffline(true);

  // Tap one, tap two; the page dies before anything else is told.
  await page.getByRole('button', { name: /^Stop work/ }).click();
  await dialogOf(page).getByRole('button', { name: 'Something else' }).click();
  await expect(dialogOf(page).getByText(/on this phone, not yet in the office/)).toBeVisible();
  const stoppedBy = Date.now();
  await page.goto('about:blank');
  await page.goto('/');
  await expect(stopped(page)).toContainText('Something else');
  await expect(stopped(page)).toContainText('on this phone');
  await expect(page.locator('.run-stopped').first()).toBeVisible();
  expect(await page.locator('.run-stopped').first().evaluate((piece) => getComputedStyle(piece).backgroundImage)).toContain('gradient');
  await page.goto(`/jobs/${jobId}`);
  await expect(stopped(page)).toContainText('on this phone');

  await stopped(page).getByRole('button', { name: 'Add a photo, a measure, words' }).click();
  await dialogOf(page).locator('input[type=file]').first().setInputFiles({ name: 'found.jpg', mimeType: 'image/jpeg', buffer: await jpeg() });
  await expect(dialogOf(page).locator('.photo-strip img')).toHaveCount(1);
  await dialogOf(page).getByLabel('In a few words').fill('An old well ring');
  await dialogOf(page).getByRole('button', { name: 'Add to the report' }).click();
  await expect(dialogOf(page).getByText('An old well ring')).toBeVisible();
  await dialogOf(page).getByRole('button', { name: 'That is all for now' }).click();

  await context.setOffline(false);
  await expect(stopped(page)).toContainText(', in the office', { timeout: 60_000 });
  await expect.poll(async () => (await reports(crew, jobId))[0]?.additions.length, { timeout: 60_000 }).toBe(2);
  const after = await reports(crew, jobId);
  expect(after).toHaveLength(before + 1);
  expect(after[0]).toMatchObject({ kind: 'other', note: 'An old well ring', status: 'open' });
  expect(after[0]?.photoIds).toHaveLength(1);
  expect(Math.abs(Date.parse(after[0]?.stoppedAt ?? '') - stoppedBy), 'stopped when it was pressed, not when it arrived').toBeLessThan(10_000);

  const office = await signIn(browser, 'estimator');
  await answerAll(office, jobId);
  await page.reload();
  await expect(page.locator('.job-block')).toBeVisible();
  await expect(stopped(page)).toHaveCount(0);
  expect(crew.complaints).toEqual([]);
  await office.context.close();
  await context.close();
});

test('a line that is hit stops the digging on the phone at once and in the office with the report; the calls are one tap', async ({ browser }) => {
  test.setTimeout(300_000);
  const jobId = await readyJob(browser, `Hit ${String(Date.now() % 100_000)}`);
  const crew = await signIn(browser, 'crew');
  const { page, context } = crew;
  await page.goto(`/jobs/${jobId}#locates`);
  await expect((await part(page, 'Locates')).locator('.may-dig').first()).toBeVisible();
  await readyForTheYard(page, jobId);
  await context.setOffline(true);

  await page.getByText('A line is hit: do this now').click();
  await expect(page.locator('.line-hit a[href="tel:911"]').first()).toBeVisible();
  await expect(page.locator('.line-hit a[href="tel:811"]').first()).toBeVisible();
  await page.getByRole('button', { name: /^We are clear/ }).click();
  await expect(dialogOf(page).getByText('nobody digs on this job, under any ticket').first()).toBeVisible();
  await dialogOf(page).getByRole('button', { name: 'That is all for now' }).click();
  const locates = await part(page, 'Locates');
  await expect(locates.getByText('Do not dig').first()).toBeVisible();
  await expect(locates.locator('.may-dig')).toHaveCount(0);

  await context.setOffline(false);
  await expect(stopped(page)).toContainText(', in the office', { timeout: 60_000 });
  const { verdict, items } = (await api<{ readonly items: readonly LocateTicket[]; readonly verdict: DigVerdict }>(crew, 'GET', `/jobs/${jobId}/locate-tickets`)).body;
  expect(verdict.reasons.map(({ code }) => code)).toEqual(['locates.reason.damage']);
  expect(items.flatMap(({ events }) => events).filter(({ kind }) => kind === 'damage')).toMatchObject([{ hazard: true }]);
  expect((await api<Job>(crew, 'GET', `/jobs/${jobId}`)).body.holds.map(({ code }) => code).toSorted()).toEqual(['found.hold.open', 'locates.reason.damage']);
  expect(crew.complaints).toEqual([]);
  await context.close();
});

test('a stop reaches the open home of the office by itself and comes first there, and the answer reaches the crew that waits', async ({ browser }) => {
  test.setTimeout(240_000);
  const crew = await signIn(browser, 'crew');
  await crew.page.getByRole('link', { name: 'Open the whole job' }).click();
  await expect(crew.page.locator('.job-block')).toBeVisible();
  const jobId = /jobs\/([^/#?]+)/.exec(crew.page.url())?.[1] ?? '';
  await crew.page.goto('/');
  const [owner, estimator] = [await signIn(browser, 'owner'), await signIn(browser, 'estimator')];
  for (const { page } of [owner, estimator]) await expect(page.getByRole('heading', { level: 1 })).toHaveText('What needs you next');
  for (const { page } of [crew, owner, estimator]) await untilItListens(page);
  await done(crew, 'POST', `/jobs/${jobId}/found`, { kind: 'steel', part: null, measure: null, note: '', photoIds: [] });
  await done(crew, 'POST', `/jobs/${jobId}/found`, { kind: 'water', part: null, measure: null, note: '', photoIds: [] });
  for (const { page } of [owner, estimator]) {
    const first = page.locator('.stopped-jobs .job-line').filter({ hasText: 'Steel in the slab' });
    await expect(first).toContainText('Work stopped: Steel in the slab', { timeout: 20_000 });
    await expect(first).toContainText('Work stopped: Water in the trench');
    await expect(first.locator('.job-line-figure')).toHaveText(/^stopped for \d+ minutes?$/);
    await expect(page.locator('.job-line').first()).toContainText('Work stopped');
  }
  await expect(crew.page.getByRole('region', { name: 'Work is stopped' }).filter({ hasText: 'Steel in the slab' })).toContainText('Water in the trench', { timeout: 20_000 });
  await answerAll(estimator, jobId);
  await expect(crew.page.getByText('Go on beside it.').first()).toBeVisible({ timeout: 20_000 });
  await expect(crew.page.getByRole('region', { name: 'Work is stopped' }).filter({ hasText: 'Steel in the slab' })).toHaveCount(0);
  await expect(owner.page.locator('.stopped-jobs .job-line').filter({ hasText: 'Steel in the slab' })).toHaveCount(0, { timeout: 20_000 });
  for (const { context, complaints } of [crew, owner, estimator]) {
    expect(complaints).toEqual([]);
    await context.close();
  }
});
