import { expect, test, type Page } from '@playwright/test';
import type { Job, ProofTest, Revision } from '@yardfall/contracts';
import { BadLink } from './support/badLink.ts';
import { ListWorker } from './support/crew.ts';
import { part } from './support/office.ts';
import { api, openBrowser, phone, signInThrough, signIn, type Person } from './support/people.ts';
import { readyForTheYard } from './support/ready.ts';
import { readyJob } from './support/readyJob.ts';

/** How far apart the marks stand [m]. */
const marks = 0.254;

/** What the three runs read when the pump does as it was promised. */
async function promised(person: Person, jobId: string) {
  const { buildRevisionId } = (await api<Job>(person, 'GET', `/jobs/${jobId}`)).body;
  const { document, evaluation } = (await api<Revision>(person, 'GET', `/jobs/${jobId}/revisions/${buildRevisionId ?? ''}`)).body;
  const basin = document.system.parts.find((entry) => entry.kind === 'basin');
  const flow = evaluation?.results.pumps[0]?.dutyAtOff.flow ?? 0;
  if (basin?.kind !== 'basin' || flow === 0) throw new Error('the design has no pump');
  const volume = Math.PI * (basin.diameter / 2) ** 2 * marks;
  return { upper: basin.onLevel / 0.3048, lower: (basin.onLevel - marks) / 0.3048, gallons: volume / 0.003785411784, seconds: volume / flow };
}

async function pumpDown(page: Page, { upper, lower, gallons, seconds }: Awaited<ReturnType<typeof promised>>): Promise<void> {
  const proof = await part(page, 'Proof');
  await proof.getByRole('button', { name: 'Record the pump-down' }).click();
  for (const run of [1, 2, 3]) {
    const fields = proof.getByRole('group', { name: `Run ${String(run)}` });
    await fields.getByLabel('Upper mark').fill(`${String(upper)}'`);
    await fields.getByLabel('Lower mark').fill(`${String(lower)}'`);
    await fields.getByLabel('Water between the marks').fill(gallons.toFixed(2));
    await fields.getByLabel('Time').fill(seconds.toFixed(1));
  }
  await proof.getByRole('button', { name: /^Record/ }).click();
  await expect(proof.getByRole('form')).toBeHidden();
}

test('a pump-down without a signal stays on the phone over a reload, and is sent exactly once when the signal is back', async ({ browser, baseURL }) => {
  test.setTimeout(300_000);
  const title = `Low pit ${String(Date.now() % 100_000)}`;
  const jobId = await readyJob(browser, title);
  const link = await BadLink.to(baseURL ?? '');
  const crew = await openBrowser(browser, phone);
  const { page, context } = crew;
  await signInThrough(crew, link.url, 'crew');
  // The pump turns only where an electrician has signed.
  expect(await (await ListWorker.of(crew, jobId)).prove(({ template }) => template === 'H1')).toEqual([]);
  const runs = await promised(crew, jobId);
  await page.goto(`${link.url}/jobs/${jobId}`);
  await readyForTheYard(page, jobId);
  const tests = async () => (await api<{ readonly items: readonly ProofTest[] }>(crew, 'GET', `/jobs/${jobId}/proof-tests`)).body.items;

  await context.setOffline(true);
  await pumpDown(page, runs);
  const here = /^A pump-down is on this phone/;
  await expect((await part(page, 'Proof')).getByText(here)).toBeVisible();
  await expect(page.getByRole('complementary', { name: 'On this phone' })).toContainText('not yet in the office');
  await page.reload();
  const proof = await part(page, 'Proof');
  await expect(proof.getByText(here)).toBeVisible();
  await expect(proof.getByRole('listitem')).toContainText(/(\d+(\.\d+)?\sgpm(, )?){3}$/);
  await expect(proof.getByRole('button', { name: 'Record another pump-down' })).toBeVisible();
  await page.goto(`${link.url}/waits`);
  await expect(page.locator('.waits > li')).toHaveCount(1);
  await expect(page.locator('.waits > li')).toContainText(new RegExp(`^Pump-down${title}`));
  link.turnDead(true);
  await context.setOffline(false);
  expect(await tests()).toEqual([]);

  // The first answer is lost on its way, and the next sending comes twice.
  link.turnDead(false);
  link.turnBad(true, ['dropAfter', 'twice', 'none']);
  await expect(page.getByText('Nothing waits')).toBeVisible({ timeout: 90_000 });
  expect(link.happened.get('dropAfter') ?? 0).toBeGreaterThan(0);
  expect(link.happened.get('twice') ?? 0).toBeGreaterThan(0);
  expect((await tests()).map(({ verdict }) => verdict)).toEqual(['pass']);
  await page.goto(`${link.url}/jobs/${jobId}`);
  await expect((await part(page, 'Proof')).getByText(/^✓?Passes:/)).toHaveCount(1);
  await expect(page.getByText(here)).toBeHidden();

  const owner = await signIn(browser, 'owner');
  await owner.page.goto(`/jobs/${jobId}`);
  await expect((await part(owner.page, 'Proof')).getByText(/Passes:/)).toHaveCount(1);
  for (const person of [crew, owner]) {
    expect(person.complaints).toEqual([]);
    await person.context.close();
  }
  await link.close();
});
