import { expect, test } from '@playwright/test';
import type { AsBuilt, Job, Revision } from '@yardfall/contracts';
import { jpeg, ListWorker } from './support/crew.ts';
import { part } from './support/office.ts';
import { api, signIn } from './support/people.ts';

const foot = 0.3048;

/** Designed invert at a distance, as a crew would read it from the sheet, raised by so many feet. */
const reading = (up: number, down: number, length: number, at: number, raised: number) => `${((up + ((down - up) * at) / length) / foot + raised).toFixed(3)}'`;

test('a pipe with a hump, entered as four inverts without a signal: the segment, how far and what to move are named, and the results are those of the office to the last bit', async ({ browser }) => {
  test.setTimeout(300_000);
  const { page, context, complaints, ...person } = await signIn(browser, 'crew');
  const who = { page, context, complaints, ...person };
  const jobs = (await api<{ readonly items: readonly Job[] }>(who, 'GET', '/jobs?open=true')).body.items;
  // The job of a day without a signal is dug to its end.
  const job = jobs.find(({ title, buildRevisionId }) => buildRevisionId !== null && !title.startsWith('Full day'));
  if (job?.buildRevisionId === undefined || job.buildRevisionId === null) throw new Error('no job of the demo company is being built');
  const worker = await ListWorker.of(who, job.id);
  await worker.prove(({ template }) => ['B2', 'C5'].includes(template));
  const { document } = (await api<Revision>(who, 'GET', `/jobs/${job.id}/revisions/${job.buildRevisionId}`)).body;
  const step = (await worker.items()).find(({ template, heldBy, facts }) => template === 'E1' && heldBy.length === 0 && facts.length === 0);
  const pipe = document.system.parts.find((one) => one.id === step?.part);
  if (step === undefined || pipe?.kind !== 'pipe') throw new Error('no pipe of the job can be shot');
  const { invertUp, invertDown, length } = pipe;

  await page.goto(`/jobs/${job.id}`);
  const work = await part(page, 'Work');
  await expect(work.getByRole('button', { name: /Falls everywhere/ }).first()).toBeVisible();
  const row = work.getByRole('button', { name: new RegExp(`Falls everywhere.*${pipe.name}`, 's') });
  await row.click();
  const form = page.getByRole('group', { name: 'Inverts from the upper end' });
  await expect(form).toBeVisible({ timeout: 30_000 });

  const before = (await api<AsBuilt>(who, 'GET', `/jobs/${job.id}/as-built`)).body;
  await context.setOffline(true);
  // The ends and the joints stand there already.
  for (let rows = await form.locator('fieldset').count(); rows < 4; rows += 1) await form.getByRole('button', { name: 'Add a shot' }).click();
  await expect(form.locator('fieldset')).toHaveCount(4);
  const places = [[0, 0], [length * 0.3, 0], [length * 0.6, 0.35], [length, 0]] as const;
  for (const [at, [distance, raised]] of places.entries()) {
    const shot = form.locator('fieldset').nth(at);
    await shot.getByLabel('Along the pipe').fill(`${(distance / foot).toFixed(3)} ft`);
    await shot.getByLabel(/^Invert/).fill(reading(invertUp, invertDown, length, distance, raised));
  }
  // Segment, amount and remedy by name, what it carries and the room below the sill, all on the phone.
  await expect(form.getByText(/it climbs/)).toHaveCount(1);
  await expect(form.getByText(/stays in the pipe at/)).toHaveCount(1);
  await expect(form.getByText(/^Lower shot 3 at .* by /)).toHaveCount(1);
  await expect(form.getByText(/Full it carries|Nothing runs before it backs up/)).toHaveCount(1);
  await expect(form.getByText(/-year storm .* (below|over)/).first()).toBeVisible({ timeout: 60_000 });
  const mark = form.locator('[data-results]');
  await expect(mark).toHaveAttribute('data-results', /^[0-9a-f]{64}$/, { timeout: 90_000 });
  // An answer to fewer shots may still have stood there: what rests is the answer to all of them.
  let onPhone = '';
  await expect.poll(async () => {
    const now = (await mark.getAttribute('data-results')) ?? '';
    const rests = now !== '' && now === onPhone;
    onPhone = now;
    return rests;
  }, { timeout: 90_000, intervals: [4000] }).toBe(true);
  await page.getByRole('button', { name: 'Record it as measured' }).click();
  await expect(page.getByText('On this phone').first()).toBeVisible();

  await context.setOffline(false);
  const now = async () => (await api<AsBuilt>(who, 'GET', `/jobs/${job.id}/as-built`)).body;
  await expect.poll(async () => (await now()).pipes.length, { timeout: 60_000 }).toBe(before.pipes.length + 1);
  const after = await now();
  expect(after.resultsSha256).toBe(onPhone);
  expect(after.resultsSha256).not.toBe(before.resultsSha256);
  expect((await worker.items()).find(({ key }) => key === step.key)?.missing).toEqual(expect.arrayContaining(['outside:slope', 'correction']));
  expect(complaints).toEqual([]);
  await context.close();
});

test('a pipe of two sticks is proven by rods alone: what is missing is said, nothing typed is lost with the page, and one press records all of it', async ({ browser }) => {
  test.setTimeout(240_000);
  const who = await signIn(browser, 'crew');
  const { page, context } = who;
  const jobs = (await api<{ readonly items: readonly Job[] }>(who, 'GET', '/jobs?open=true&limit=100')).body.items;
  const job = jobs.find(({ title, buildRevisionId }) => title === 'Wicker Road' && buildRevisionId !== null);
  if (job?.buildRevisionId === undefined || job.buildRevisionId === null) throw new Error('the crew has no job');
  const worker = await ListWorker.of(who, job.id);
  await worker.prove(({ template }) => ['B2', 'C5'].includes(template));
  const { document } = (await api<Revision>(who, 'GET', `/jobs/${job.id}/revisions/${job.buildRevisionId}`)).body;
  const step = (await worker.items()).findLast(({ template, facts, requirement }) => template === 'E1' && facts.length === 0 && requirement.measures.some(({ name }) => name === 'joint:1'));
  const pipe = document.system.parts.find((one) => one.id === step?.part);
  if (step === undefined || pipe?.kind !== 'pipe') throw new Error('no pipe with a joint is left to be shot');
  const { invertUp, invertDown, length } = pipe;
  const backsight = 2.34;
  const rod = (at: number) => ((document.site.datum.level - (invertUp + ((invertDown - invertUp) * at) / length)) / foot + backsight).toFixed(3);

  await page.goto(`/jobs/${job.id}`);
  await part(page, 'Work');
  const row = page.locator(`.item-row[data-item="${step.key}"]`);
  await row.click();
  const screen = page.getByRole('dialog').locator('.item-screen');
  const form = screen.getByRole('group', { name: 'Inverts from the upper end' });
  await expect(form).toBeVisible({ timeout: 60_000 });
  await screen.getByRole('radio', { name: 'Rod readings' }).check();
  await screen.getByLabel(/^Rod on the bench mark/).fill(String(backsight));
  const places = await form.locator('fieldset').count();
  expect(places).toBeGreaterThanOrEqual(3);
  for (let n = 0; n < places; n += 1) {
    const at = (length * n) / (places - 1);
    await form.locator('fieldset').nth(n).getByLabel(/^Invert, rod/).fill(rod(at));
    if (n === 0) await expect(screen.locator('.needs')).toContainText('No shot near the joint at');
  }
  await expect(screen.locator('.needs')).toHaveText(/^Still needed\s*1 photo: [^:]+$/);
  await expect(screen.getByRole('button', { name: 'Keep what stands here' })).toBeVisible();
  // The battery is taken out before anything was recorded.
  await page.reload();
  await part(page, 'Work');
  await row.click();
  await expect(form.locator('fieldset').nth(1).getByLabel(/^Invert, rod/)).not.toHaveValue('', { timeout: 60_000 });
  await screen.locator('input[type=file]').first().setInputFiles({ name: 'rod.jpg', mimeType: 'image/jpeg', buffer: await jpeg() });
  await screen.getByRole('button', { name: 'Done', exact: true }).click();
  await expect(screen.locator('.hold-state')).toContainText('Proven');
  await expect.poll(async () => (await worker.items()).find(({ key }) => key === step.key)?.state, { timeout: 60_000 }).toBe('proven');
  expect((await worker.items()).find(({ key }) => key === step.key)?.facts.map(({ fact }) => fact.kind).sort()).toEqual(['photo', 'profile', 'ticked']);
  expect(who.complaints).toEqual([]);
  await context.close();
});
