import { expect, test } from '@playwright/test';
import type { Checklist } from '@yardfall/contracts';
import { jpeg, ListWorker } from './support/crew.ts';
import { dialogOf, screenOf } from './support/crewDay.ts';
import { part } from './support/office.ts';
import { api } from './support/people.ts';
import { readyForTheYard } from './support/ready.ts';
import { member, readyJob } from './support/readyJob.ts';

test('it rains without a signal: one press holds the work in the trench, one photo and one press open it, and the office judges the same', async ({ browser }) => {
  test.setTimeout(240_000);
  const jobId = await readyJob(browser, `Rain ${String(Date.now() % 100_000)}`);
  await (await ListWorker.of(await member(browser, 'owner'), jobId)).prove(({ template }) => template === 'B6');
  const crew = await member(browser, 'crew');
  expect(await (await ListWorker.of(crew, jobId)).prove(({ template }) => ['A2', 'A6', 'B2', 'B5', 'C3', 'C4', 'C5'].includes(template))).toEqual([]);
  const { page, context } = crew;
  const list = async () => (await api<Checklist>(crew, 'GET', `/jobs/${jobId}/checklist`)).body.items;
  const pipe = (await list()).find(({ template }) => template === 'E1')?.key ?? '';
  await page.goto(`/jobs/${jobId}`);
  await readyForTheYard(page, jobId);
  await part(page, 'Work');
  const row = (key: string) => page.locator(`.item-row[data-item="${key}"]`);

  await context.setOffline(true);
  await test.step('rain holds the trench', async () => {
    await expect(row(pipe)).not.toContainText('Trench looked at today');
    await page.getByRole('button', { name: 'It rained: look at the trench again' }).first().click();
    await expect(row(pipe)).toContainText('After: Trench looked at today');
    await row(pipe).click();
    await expect(screenOf(page)).toContainText('First this has to be proven');
    await page.keyboard.press('Escape');
  });
  await test.step('a photo and a press open it: the name of who looked stands there', async () => {
    await row('C5').click();
    const screen = screenOf(page);
    await expect(screen.locator('[data-text="competentPerson"] input')).toHaveValue('A-17');
    await screen.locator('input[type=file]').first().setInputFiles({ name: 'edge.jpg', mimeType: 'image/jpeg', buffer: await jpeg() });
    await expect(screen.getByText('Photos: 1 of 1')).toBeVisible({ timeout: 30_000 });
    await screen.locator(':scope > .finish').getByRole('button', { name: 'Done', exact: true }).click();
    await expect(screen.getByText('Done and on record')).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(dialogOf(page)).toHaveCount(0);
    await expect(row(pipe)).not.toContainText('Trench looked at today');
  });
  await test.step('and so it is in the office', async () => {
    await context.setOffline(false);
    await expect.poll(async () => (await list()).find(({ key }) => key === 'C5')?.facts.length, { timeout: 60_000 }).toBe(7);
    const items = await list();
    const c5 = items.find(({ key }) => key === 'C5');
    expect(c5?.facts.map(({ fact, verdict }) => `${fact.kind} ${verdict}`).slice(3)).toEqual(['rained kept', 'photo kept', 'written kept', 'ticked kept']);
    expect([c5?.state, items.find(({ key }) => key === pipe)?.heldBy]).toEqual(['proven', []]);
  });
  expect(crew.complaints).toEqual([]);
});
