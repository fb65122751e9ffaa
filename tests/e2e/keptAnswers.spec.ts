import { expect, test, type Locator, type Page } from '@playwright/test';
import type { DesignDocument } from '@yardfall/calc';
import { type Permits, permitKinds, type Photo, type PrivateLines } from '@yardfall/contracts';
import { BadLink } from './support/badLink.ts';
import { ternHollow } from './support/bigYard.ts';
import { jpeg } from './support/crew.ts';
import { dialogOf } from './support/crewDay.ts';
import { part } from './support/office.ts';
import { api, openBrowser, phone, signInThrough, type Person } from './support/people.ts';
import { readyForTheYard } from './support/ready.ts';
import { done, notNeeded, soldJob } from './support/readyJob.ts';

const read = async <T>(person: Person, jobId: string, what: string): Promise<T> => (await api<T>(person, 'GET', `/jobs/${jobId}/${what}`)).body;

/** Tern Hollow with one question about its outlet left open. */
function permissionUnknown(): DesignDocument {
  const site = ternHollow();
  return { ...site, system: { parts: site.system.parts.map((entry) => (entry.kind === 'outlet' && entry.id === 'O1' ? { ...entry, questions: { ...entry.questions, permissionHeld: 'unknown' } } : entry)) } };
}

interface Told {
  readonly asked: string | RegExp;
  readonly answer: string;
  readonly number?: string;
  readonly note?: string;
  readonly photo?: Buffer;
}

async function say(page: Page, where: Locator, { asked, answer, number, note, photo }: Told): Promise<void> {
  await where.getByRole('button', { name: asked, exact: true }).click();
  const dialog = dialogOf(page);
  await dialog.getByRole('radio', { name: answer, exact: true }).check({ force: true });
  if (number !== undefined) await dialog.getByLabel('Number on the paper').fill(number);
  if (note !== undefined) await dialog.getByRole('textbox').last().fill(note);
  if (photo !== undefined) {
    await dialog.locator('input[type=file]').setInputFiles({ name: 'paper.jpg', mimeType: 'image/jpeg', buffer: photo });
    await expect(dialog.getByText('on this phone', { exact: true })).toBeVisible();
  }
  await dialog.getByRole('button', { name: 'Record the answer' }).click();
  await expect(dialog).toBeHidden();
}

const row = (where: Locator, name: string) => where.getByRole('row').filter({ hasText: name });

test('permits, an outlet question and a line of the homeowner are answered without a signal: they count to the safe side at once, arrive once with their time, and a refusal is told', async ({ browser, baseURL }) => {
  test.setTimeout(300_000);
  const { jobId } = await soldJob(browser, `Kept answers ${String(Date.now() % 100_000)}`, permissionUnknown());
  const link = await BadLink.to(baseURL ?? '');
  const office = await openBrowser(browser, phone);
  const { page, context } = office;
  await signInThrough(office, link.url, 'estimator');
  // All but the tree and the flood zone are answered; one line of the homeowner was denied.
  await done(office, 'POST', `/jobs/${jobId}/permits`, { answers: permitKinds.filter((kind) => kind !== 'tree' && kind !== 'floodPlain').map((kind) => ({ kind, ...notNeeded })) });
  await done(office, 'POST', `/jobs/${jobId}/private-lines`, { lines: [{ question: 'pool', state: 'no', note: '', on: null, photoId: null }] });
  await page.goto(`${link.url}/jobs/${jobId}#permits`);
  const permits = await part(page, 'Permits');
  await expect(permits.getByText('3 answers are open')).toBeVisible();
  await readyForTheYard(page, jobId, ['jobs.read', 'permits.read', 'privateLines.read', 'locates.list', 'photos.list']);
  const began = Date.now();

  await test.step('without a signal', async () => {
    link.turnDead(true);
    await context.setOffline(true);
    await say(page, permits, { asked: 'Answer: Tree permit', answer: 'Granted', number: 'T-19' });
    await expect(row(permits, 'Tree permit')).toContainText('It frees nothing until the office has it.');
    await expect(permits.getByText('3 answers are open'), 'a yes on this phone frees nothing').toBeVisible();
    await say(page, permits, { asked: 'Change: Electrical permit', answer: 'Refused', note: 'The inspector wants a drawing first' });
    await expect(row(permits, 'Electrical permit')).toContainText('It holds the release from now on');
    await expect(permits.getByText('4 answers are open'), 'a no counts at once').toBeVisible();
    await say(page, permits, { asked: /^Answer: The permission is on file/, answer: 'Granted', photo: await jpeg() });
    // A picture that the office cannot read is the only paper of this one.
    await say(page, permits, { asked: 'Answer: Floodplain approval', answer: 'Granted', photo: (await jpeg()).subarray(0, 9_000) });
    const locates = await part(page, 'Locates');
    await say(page, locates, { asked: 'Answer: Pool lines', answer: 'Yes', note: 'Along the fence' });
    await expect(row(locates, 'Pool lines')).toContainText('What asks for more care counts at once');
  });
  await test.step('the page is opened anew', async () => {
    await page.reload();
    await expect((await part(page, 'Permits')).getByText('4 answers are open')).toBeVisible();
    await page.goto(`${link.url}/waits`);
    await expect(page.locator('.waits > li')).toHaveText([
      /^Answer for the job · Tree permit: Granted/, /^Answer for the job · Electrical permit: Refused/, /^Photo/, /^Answer for the job · The permission is on file: Granted/, /^Photo/, /^Answer for the job · Floodplain.*: Granted/, /^Answer for the job · Pool.*: Yes/,
    ]);
    expect((await read<Permits>(office, jobId, 'permits')).permits.find(({ kind }) => kind === 'electrical')?.gap, 'the office knows nothing yet').toBeNull();
  });
  const ended = Date.now();
  await test.step('each is taken once, though every second answer is lost and every other comes twice', async () => {
    await context.setOffline(false);
    link.turnBad(true, ['dropAfter', 'twice']);
    link.turnDead(false);
    await expect(page.locator('.waits > li')).toHaveCount(2, { timeout: 90_000 });
    for (const fault of ['dropAfter', 'twice'] as const) expect(link.happened.get(fault) ?? 0, fault).toBeGreaterThan(1);
    const { permits: said, outlets } = await read<Permits>(office, jobId, 'permits');
    const of = (kind: string) => said.find((permit) => permit.kind === kind);
    expect(of('tree')).toMatchObject({ gap: null, answer: { state: 'granted', number: 'T-19' } });
    expect(of('electrical')).toMatchObject({ gap: 'refused', answer: { note: 'The inspector wants a drawing first' } });
    expect(of('floodPlain')?.gap, 'without its paper it shows nothing').toBe('unknown');
    const permission = outlets.find(({ outlet }) => outlet === 'O1')?.questions.find(({ question }) => question === 'O3');
    const [photo, ...others] = (await read<{ readonly items: readonly Photo[] }>(office, jobId, 'photos')).items;
    expect(others).toEqual([]);
    expect(permission).toMatchObject({ gap: null, answer: { photoId: photo?.id } });
    const pool = (await read<PrivateLines>(office, jobId, 'private-lines')).lines.find(({ question }) => question === 'pool');
    expect(pool).toMatchObject({ state: 'yes', note: 'Along the fence' });
    for (const answer of [of('tree')?.answer, of('electrical')?.answer, permission?.answer, pool]) {
      expect(Date.parse(answer?.at ?? ''), 'when it was given, not when it arrived').toBeGreaterThan(began);
      expect(Date.parse(answer?.at ?? '')).toBeLessThan(ended);
    }
    const { items } = (await api<{ readonly items: readonly { readonly action: string }[] }>(office, 'GET', `/audit?limit=100&jobId=${jobId}`)).body;
    const times = (action: string) => items.filter((entry) => entry.action === action).length;
    expect(['permit.answered', 'permit.outletAnswered', 'locate.privateLines'].map(times), 'one more of each than was told before').toEqual([3, 1, 2]);
  });
  await test.step('what the office did not take is told where it was answered', async () => {
    await expect(page.locator('.waits > li')).toHaveText([/^Photo.*refused/s, /^Answer for the job · Floodplain.*refused/s]);
    await page.goto(`${link.url}/jobs/${jobId}#permits`);
    const after = await part(page, 'Permits');
    await expect(row(after, 'Floodplain')).toContainText('The office did not take it; see what waits.');
    await expect(after.getByText('2 answers are open')).toBeVisible();
  });
  expect(office.complaints).toEqual([]);
  await context.close();
  await link.close();
});
