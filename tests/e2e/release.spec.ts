import { expect, test, type Locator, type Page } from '@playwright/test';
import type { DesignDocument } from '@yardfall/calc';
import { outletQuestionIds, outletQuestions, permitKinds, type Permits, type Photo, type Problem } from '@yardfall/contracts';
import { messages } from '@yardfall/text';
import { ternHollow } from './support/bigYard.ts';
import { jpeg } from './support/crew.ts';
import { part } from './support/office.ts';
import { api, signIn, type Person } from './support/people.ts';
import { done, notNeeded, soldJob, type Sold } from './support/readyJob.ts';

const granted = { state: 'granted', number: 'B-7', note: '', on: '2026-11-02', expiresOn: null, photoId: null };
const unknown = { ...granted, state: 'unknown', number: '', on: null };
const outlet = 'O1';

/** Tern Hollow with nothing known about the outlet of its pump. */
function nothingKnown(): DesignDocument {
  const site = ternHollow();
  const questions = Object.fromEntries(Object.values(outletQuestions).map((question) => [question, 'unknown']));
  return { ...site, system: { parts: site.system.parts.map((entry) => (entry.kind === 'outlet' && entry.id === outlet ? { ...entry, questions } : entry)) } } as DesignDocument;
}

/** What the page says, as it stands now: the reasons by their order, and the button. */
async function look(page: Page): Promise<{ readonly reasons: Locator; readonly button: Locator }> {
  await page.reload();
  const offer = await part(page, 'Offer');
  const button = offer.getByRole('button', { name: /^Release/ });
  await expect(button).toBeVisible();
  return { reasons: offer.locator('.offer-held > li'), button };
}

/** Nothing that a finger or a key does there releases the job. */
async function expectHeld(page: Page, reasons: readonly RegExp[]): Promise<void> {
  const said = await look(page);
  await expect(said.reasons).toHaveText([...reasons]);
  await expect(said.button).toBeDisabled();
  await said.button.click({ force: true });
  await said.button.press('Enter');
}

const asks = (id: (typeof outletQuestionIds)[number]) => new RegExp(`, ${id} ".*${messages[`designs.question.${outletQuestions[id]}`].en.slice(0, 20)}.*": not answered yet\\.$`);

async function say(owner: Person, { jobId, revisionId }: Sold, question: string, answer: object): Promise<void> {
  await done(owner, 'POST', `/jobs/${jobId}/permits/outlets`, { revisionId, outlet, question, ...answer });
}

test('release to dig is refused on the page by name for every outlet question and permit that is unknown, and released once all are answered', async ({ browser }) => {
  test.setTimeout(300_000);
  const sold = await soldJob(browser, `Unknown outlet ${String(Date.now() % 100_000)}`, nothingKnown());
  const { jobId } = sold;
  const owner = await signIn(browser, 'owner');
  const { page } = owner;
  await page.goto(`/jobs/${jobId}`);
  const permits = (kinds: readonly string[], answer: object) => done(owner, 'POST', `/jobs/${jobId}/permits`, { answers: kinds.map((kind) => ({ kind, ...answer })) });

  await test.step('nothing is known', async () => {
    const { reasons, button } = await look(page);
    await expect(button).toBeDisabled();
    await expect(reasons).toHaveCount(outletQuestionIds.length + permitKinds.length);
    for (const id of outletQuestionIds) await expect(reasons.filter({ hasText: asks(id) })).toHaveCount(1);
    for (const kind of permitKinds) await expect(reasons.filter({ hasText: `${messages[`permits.kind.${kind}`].en}: not answered yet.` })).toHaveCount(1);
  });
  await permits(permitKinds, notNeeded);
  for (const id of outletQuestionIds) await say(owner, sold, id, granted);
  for (const id of outletQuestionIds) {
    await test.step(`${id} alone is unknown`, async () => {
      await say(owner, sold, id, unknown);
      await expectHeld(page, [asks(id)]);
      expect((await api<Problem>(owner, 'POST', `/jobs/${jobId}/release`, { offerId: sold.offerId })).status).toBe(409);
      await say(owner, sold, id, granted);
    });
  }
  await test.step('a permit alone is unknown', async () => {
    await permits(['electrical'], unknown);
    await expectHeld(page, [/^Electrical permit: not answered yet\.$/]);
  });
  await test.step('whoever is not the owner has no such button', async () => {
    const estimator = await signIn(browser, 'estimator');
    await estimator.page.goto(`/jobs/${jobId}`);
    const offer = await part(estimator.page, 'Offer');
    await expect(offer.locator('.offer-held > li')).toHaveCount(1);
    await expect(offer.getByRole('button', { name: /^Release/ })).toHaveCount(0);
    await estimator.context.close();
  });
  await test.step('answered on the page, it can be pressed at once', async () => {
    const answers = await part(page, 'Permits');
    await answers.getByRole('button', { name: /^Answer: Electrical permit/ }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByRole('radio', { name: 'Granted' }).check({ force: true });
    // The paper is shown by a photo that is taken here, and no number.
    await dialog.locator('input[type=file]').setInputFiles({ name: 'permit.jpg', mimeType: 'image/jpeg', buffer: await jpeg() });
    await expect(dialog.locator('img')).toBeVisible();
    await dialog.getByRole('button', { name: 'Record the answer' }).click();
    await expect(dialog).toBeHidden();
    // Kept first, sent then.
    const inTheOffice = async () => (await api<Permits>(owner, 'GET', `/jobs/${jobId}/permits`)).body.permits.find(({ kind }) => kind === 'electrical')?.answer?.photoId ?? null;
    await expect.poll(inTheOffice).not.toBeNull();
    const { items: photos } = (await api<{ readonly items: readonly Photo[] }>(owner, 'GET', `/jobs/${jobId}/photos`)).body;
    expect(photos.map(({ id, note }) => [id, note])).toEqual([[await inTheOffice(), 'Paper: Electrical permit']]);
    const offer = await part(page, 'Offer');
    await offer.getByRole('button', { name: /^Release/ }).click();
    await expect(offer.getByText(/^Released/)).toBeVisible();
  });
  expect((await api<{ readonly releasedAt: string | null }>(owner, 'GET', `/jobs/${jobId}`)).body.releasedAt).not.toBeNull();
  expect(owner.complaints).toEqual([]);
  await owner.context.close();
});
