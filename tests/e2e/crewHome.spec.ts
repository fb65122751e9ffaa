import { expect, test, type Browser } from '@playwright/test';
import type { Checklist, Job } from '@yardfall/contracts';
import { ListWorker } from './support/crew.ts';
import { dialogOf } from './support/crewDay.ts';
import { api, signIn, type Person } from './support/people.ts';
import { done, readyJob } from './support/readyJob.ts';

test("the crew's home draws the job's own design as it stands, and says who is there; to stop and the clock are one tap away", async ({ browser }) => {
  test.setTimeout(240_000);
  // A job of its own; what other tests left to this crew stands before it, and is taken off.
  const title = `Home ${String(Date.now() % 100_000)}`;
  const jobId = await readyJob(browser, title);
  const crew = await signIn(browser, 'crew');
  const { page, complaints } = crew;
  await leaveOnly(browser, crew, [title, 'Wicker Road']);
  const worker = await ListWorker.of(crew, jobId);
  // At work like what other tests left behind it: the newest stands first.
  expect(await worker.prove(({ template }) => ['A2', 'B2'].includes(template))).toEqual([]);
  const { body: job } = await api<Job>(crew, 'GET', `/jobs/${jobId}`);
  await page.goto('/');
  const home = page.locator('.this-job');
  await expect(home.locator('.next-item button')).toBeVisible();
  await expect(home.locator('.this-job-name')).toHaveText(title);

  await codeAtTheGate(browser, job.id);

  await test.step('each part is drawn in the state of its steps', async () => {
    const drawing = home.locator('.home-drawing .drawing-frame > svg');
    await expect(drawing).toBeVisible({ timeout: 30_000 });
    await expect(drawing.locator('[data-part="P1"]').first()).toHaveAttribute('data-state', 'notYet');
    await expect(drawing.locator('[data-state="built"]')).toHaveCount(0);
    expect(await worker.prove(({ part, template }) => part === 'P1' || ['A6', 'B2', 'C3', 'C5'].includes(template))).toEqual([]);
    await page.reload();
    await expect(drawing.locator('[data-part="P1"]').first()).toHaveAttribute('data-state', 'built', { timeout: 30_000 });
    const { body } = await api<Checklist>(crew, 'GET', `/jobs/${job.id}/checklist`);
    await expect(home.locator('.home-parts')).toContainText(`Built: ${body.items.find(({ part }) => part === 'P1')?.partName ?? ''}`);
  });

  await test.step('who is on the job, who is at the house, the gate and the way', async () => {
    await expect(home.getByText('On this job: Rosa Delgado')).toBeVisible();
    await expect(home.getByText(`At the house: ${job.customer.name}`)).toBeVisible();
    await expect(home.getByText('Gate code 4077')).toBeVisible();
    await expect(home.getByRole('link', { name: 'Show it on a map' })).toHaveAttribute('href', /^geo:/);
  });

  await test.step('the clock runs from here, and stop-work opens here', async () => {
    await home.getByRole('button', { name: 'Start the clock' }).click();
    await dialogOf(page).getByRole('button').last().click();
    await expect(home.getByText(/since/)).toBeVisible();
    await home.getByRole('button', { name: 'Stop the clock' }).click();
    await home.getByRole('button', { name: 'Stop work and say what we found' }).click();
    await expect(dialogOf(page).getByRole('button', { name: 'A pipe in the way' })).toBeVisible();
  });
  expect(complaints).toEqual([]);
});

/** Whichever job comes first for the crew, its house has a gate with a code, as the estimator noted it. */
async function codeAtTheGate(browser: Browser, jobId: string): Promise<void> {
  const office = await signIn(browser, 'estimator');
  const answer = await office.context.request.get(`/api/v1/jobs/${jobId}`);
  const { property } = (await answer.json()) as Job;
  const { address, state, timeZone, notes } = property;
  const written = await api(office, 'PATCH', `/jobs/${jobId}`, { property: { address, state, timeZone, notes, gateCode: '4077' } }, { 'if-match': answer.headers()['etag'] ?? '' });
  expect(written.status).toBe(200);
  await office.context.close();
}

async function leaveOnly(browser: Browser, crew: Person, titles: readonly string[]): Promise<void> {
  const owner = await signIn(browser, 'owner');
  const { items } = (await api<{ readonly items: readonly Job[] }>(crew, 'GET', '/jobs?open=true&limit=100')).body;
  for (const { id, title, assignments } of items) {
    const others = assignments.filter(({ role }) => role !== 'crew').map(({ memberId, role }) => ({ memberId, role }));
    if (!titles.includes(title) && others.length < assignments.length) await done(owner, 'PUT', `/jobs/${id}/assignments`, { assignments: others });
  }
  await owner.context.close();
}
