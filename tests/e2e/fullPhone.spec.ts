import { expect, test } from '@playwright/test';
import type { FoundReport, Job } from '@yardfall/contracts';
import { dialogOf } from './support/crewDay.ts';
import { part } from './support/office.ts';
import { api, signIn } from './support/people.ts';
import { done } from './support/readyJob.ts';

const full = 'This phone has no room left for a photo';

test('a full phone opens no camera and says why before the shutter; work is stopped on it all the same', async ({ browser }) => {
  test.setTimeout(180_000);
  const crew = await signIn(browser, 'crew');
  const { page, context } = crew;
  const { items } = (await api<{ readonly items: readonly Job[] }>(crew, 'GET', '/jobs?open=true&limit=100')).body;
  const job = items.find(({ buildRevisionId }) => buildRevisionId !== null);
  if (job === undefined) throw new Error('the crew has no job');
  // Room for one photo more, then for none: forty megabytes are below what the phone itself works in.
  await page.addInitScript(() => {
    const rooms = window as unknown as { freeBytes: number };
    rooms.freeBytes = 56_000_000;
    navigator.storage.estimate = () => Promise.resolve({ quota: 1_000_000_000, usage: 1_000_000_000 - rooms.freeBytes });
  });
  await page.goto(`/jobs/${job.id}`);
  const work = await part(page, 'Work');
  await work.getByRole('button', { name: 'Add a photo note' }).click();
  const form = page.getByRole('form', { name: 'Add a photo note' });
  await expect(form.getByText('Room for about 1 photo more on this phone.').first()).toBeVisible();
  await expect(form.locator('input[type=file]').first()).toBeEnabled();

  await page.addInitScript(() => { (window as unknown as { freeBytes: number }).freeBytes = 40_000_000; });
  await page.reload();
  await (await part(page, 'Work')).getByRole('button', { name: 'Add a photo note' }).click();
  await expect(form.getByText(full).first()).toBeVisible();
  for (const input of await form.locator('input[type=file]').all()) await expect(input).toBeDisabled();

  await page.getByRole('button', { name: /^Stop work/ }).first().click();
  await dialogOf(page).getByRole('button', { name: 'Water in the trench' }).click();
  await expect(dialogOf(page).getByText(full)).toBeVisible();
  await expect(dialogOf(page).locator('input[type=file]')).toBeDisabled();
  await expect(page.getByRole('region', { name: 'Work is stopped' }).first()).toContainText(', in the office', { timeout: 60_000 });
  const office = await signIn(browser, 'estimator');
  for (const { id, status } of (await api<{ readonly items: readonly FoundReport[] }>(office, 'GET', `/jobs/${job.id}/found`)).body.items) {
    if (status === 'open') await done(office, 'POST', `/jobs/${job.id}/found/${id}/answer`, { answer: 'Pump it out first.' });
  }
  expect(crew.complaints).toEqual([]);
  await office.context.close();
  await context.close();
});
