import { expect, test, type Browser } from '@playwright/test';
import type { Problem, ProofTest, Revision } from '@yardfall/contracts';
import { jpeg, ListWorker } from './support/crew.ts';
import { drawDesign, issueDesign } from './support/design.ts';
import { assign, part, takeCall, takeLevels, takeRain } from './support/office.ts';
import { api, openBrowser, phone, signIn } from './support/people.ts';
import { acceptOffer, locate, priceIt, release, sendOffer } from './support/sale.ts';

/** One new site from the call to the handover, as four people, each in a browser of their own, on a table of the NOAA Atlas 14 server. */
test.describe.serial('a new site', () => {
  const title = `Heron Loop ${String(Date.now() % 100_000)}`;
  let jobId = '';
  let link = '';

  test('1 the owner takes the call and says who estimates and digs', async ({ browser }) => {
    const owner = await signIn(browser, 'owner');
    jobId = await takeCall(owner.page, title);
    await assign(owner.page);
    expect(owner.complaints).toEqual([]);
    await owner.context.close();
  });

  test('2 to 4 the estimator takes levels and rain, designs and issues', async ({ browser }) => {
    const estimator = await open(browser, 'estimator', jobId);
    await takeLevels(estimator.page);
    await takeRain(estimator.page);
    await drawDesign(estimator.page);
    await issueDesign(estimator.page);
    expect(estimator.complaints).toEqual([]);
    await estimator.context.close();
  });

  test('5 and 6 the estimator prices and offers, the customer accepts, the owner releases', async ({ browser }) => {
    const estimator = await open(browser, 'estimator', jobId);
    await priceIt(estimator.page);
    link = await sendOffer(estimator.page);
    const customer = await openBrowser(browser, phone);
    await acceptOffer(customer.page, link);
    const owner = await open(browser, 'owner', jobId);
    await release(owner.page);
    for (const person of [estimator, customer, owner]) {
      expect(person.complaints).toEqual([]);
      await person.context.close();
    }
  });

  test('7 the crew may not dig before every utility has answered', async ({ browser }) => {
    const crew = await open(browser, 'crew', jobId);
    await locate(crew.page);
    expect(crew.complaints).toEqual([]);
    await crew.context.close();
  });

  test('8 the pour is refused on the page and by the API while the taped grate lacks its photo', async ({ browser }) => {
    const crew = await open(browser, 'crew', jobId);
    const owner = await signIn(browser, 'owner');
    const office = await ListWorker.of(owner, jobId);
    const hands = await ListWorker.of(crew, jobId);
    const byHand = ['D4', 'I1', 'I2', 'I3'];
    const before = (templates: readonly string[]) => (item: { readonly group: string; readonly template: string }) => item.group !== 'J' && !templates.includes(item.template);
    await office.prove((item) => item.requirement.signers.includes('owner') && !item.requirement.signers.includes('crewLead'));
    await hands.prove(before(byHand));
    await hands.prove((item) => ['I1', 'I2'].includes(item.template));

    await crew.page.reload();
    const work = await part(crew.page, 'Work');
    await work.getByRole('button', { name: /^Place the concrete/ }).first().click();
    const dialog = crew.page.getByRole('dialog');
    await expect(dialog.getByRole('button', { name: 'Start the pour' })).toBeDisabled();
    await expect(dialog.getByText(/Grate fitted, locked and taped/).first()).toBeVisible();
    const pour = await hands.item('I3');
    for (const person of [crew, owner]) {
      const refused = await api<Problem>(person, 'POST', `/jobs/${jobId}/checklist/${encodeURIComponent(pour.key)}/begin`, {});
      expect(refused.status).toBe(409);
      expect(refused.body.code).toBe('checklist.held');
      expect(JSON.stringify(refused.body.params)).toContain('HP-13');
    }

    await dialog.getByRole('button', { name: /^Grate fitted/ }).click();
    for (let shot = 0; shot < 3 && (await hands.item('D4')).missing.includes('photo'); shot += 1) {
      const photos = (await hands.item('D4')).facts.length;
      await dialog.locator('input[type=file]').first().setInputFiles({ name: 'grate.jpg', mimeType: 'image/jpeg', buffer: await jpeg() });
      await expect.poll(async () => (await hands.item('D4')).facts.length, { timeout: 20_000 }).toBeGreaterThan(photos);
    }
    await hands.prove((item) => item.template === 'D4');
    await hands.prove((item) => ['I1', 'I2'].includes(item.template));
    const opened = await api(crew, 'POST', `/jobs/${jobId}/checklist/${encodeURIComponent(pour.key)}/begin`, {});
    expect(opened.status).toBe(200);
    expect(await hands.prove(before([]))).toEqual([]);
    expect(crew.complaints).toEqual([]);
    await crew.context.close();
    await owner.context.close();
  });

  test('9 and 10 the pump is proven, the system handed over, and the customer sees what to do', async ({ browser }) => {
    const crew = await open(browser, 'crew', jobId);
    const owner = await signIn(browser, 'owner');
    const job = (await api<{ readonly buildRevisionId: string }>(crew, 'GET', `/jobs/${jobId}`)).body;
    const { document, evaluation } = (await api<Revision>(crew, 'GET', `/jobs/${jobId}/revisions/${job.buildRevisionId}`)).body;
    const basin = document.system.parts.find((entry) => entry.kind === 'basin');
    const predicted = evaluation?.results.pumps[0]?.dutyAtOff.flow ?? 0;
    expect(basin?.kind === 'basin' && predicted > 0).toBe(true);
    if (basin?.kind !== 'basin') return;

    const proof = await part(crew.page, 'Proof');
    await proof.getByRole('button', { name: /pump-down/i }).first().click();
    for (const run of [1, 2, 3]) {
      const fields = proof.getByRole('group', { name: `Run ${String(run)}` });
      await fields.getByLabel('Upper mark').fill(`${String(basin.onLevel / 0.3048)}'`);
      await fields.getByLabel('Lower mark').fill(`${String((basin.onLevel - 0.254) / 0.3048)}'`);
      const volume = Math.PI * (basin.diameter / 2) ** 2 * 0.254;
      await fields.getByLabel('Water between the marks').fill((volume / 0.003785411784).toFixed(2));
      await fields.getByLabel('Time').fill((volume / predicted).toFixed(1));
    }
    await proof.getByRole('button', { name: /^Record/ }).click();
    await expect(proof.getByText(/Passes:/)).toBeVisible();
    const tests = (await api<{ readonly items: readonly ProofTest[] }>(crew, 'GET', `/jobs/${jobId}/proof-tests`)).body.items;
    expect(tests[0]?.verdict).toBe('pass');

    const hands = await ListWorker.of(crew, jobId);
    const office = await ListWorker.of(owner, jobId);
    await hands.prove(() => true);
    await office.prove(() => true);
    expect(await hands.prove(() => true)).toEqual([]);

    await owner.page.goto(`/jobs/${jobId}`);
    const handover = await part(owner.page, 'Handover');
    await handover.getByLabel('Breaker').fill('14');
    await handover.getByRole('button', { name: 'Hand over' }).click();
    await expect(handover.getByText(/Warranty from/)).toBeVisible();

    const customer = await openBrowser(browser, phone);
    await customer.page.goto(link);
    await expect(customer.page.getByRole('heading', { name: 'What to do, and when' })).toBeVisible();
    await expect(customer.page.getByText(/Warranty: from/)).toBeVisible();
    await expect(customer.page.getByText(/If the alarm sounds/)).toBeVisible();
    for (const person of [crew, owner, customer]) {
      expect(person.complaints).toEqual([]);
      await person.context.close();
    }
  });
});

async function open(browser: Browser, kind: 'owner' | 'estimator' | 'crew', jobId: string) {
  const person = await signIn(browser, kind);
  await person.page.goto(`/jobs/${jobId}`);
  return person;
}
