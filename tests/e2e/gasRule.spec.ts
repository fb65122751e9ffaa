import { expect, test, type Page } from '@playwright/test';
import type { GasRule } from '@yardfall/contracts';
import { api, signIn } from './support/people.ts';
import { readyForTheYard } from './support/ready.ts';
import { done, readyJob } from './support/readyJob.ts';

const rule = 'Leave a running engine as it is. Walk away from it.';

/** As a crew opens it that has hit a line: no signal, and nothing fetched for it before. */
async function hitWithoutSignal(page: Page): Promise<void> {
  await page.context().setOffline(true);
  await page.reload();
  await page.getByText('A line is hit: do this now').click();
  await expect(page.locator('.line-hit').getByText('Leave now, upwind. Take everyone along.').first()).toBeVisible();
}

test('what the gas company told is entered by the owner and read by the crew beside the built-in steps, without a signal', async ({ browser }) => {
  test.setTimeout(240_000);
  const jobId = await readyJob(browser, `Gas rule ${String(Date.now() % 100_000)}`);
  const owner = await signIn(browser, 'owner');
  const { items } = (await api<{ readonly items: readonly GasRule[] }>(owner, 'GET', '/gas-rules')).body;
  for (const { gasCompany, inForce } of items) if (inForce) await done(owner, 'POST', '/gas-rules', { gasCompany, rule: '', source: 'An earlier test', readOn: '2026-03-01' });
  const crew = await signIn(browser, 'crew');

  await test.step('nobody entered one', async () => {
    await crew.page.goto(`/jobs/${jobId}`);
    await readyForTheYard(crew.page, jobId);
    await hitWithoutSignal(crew.page);
    await expect(crew.page.locator('.line-hit').getByText('Your company has entered no rule of its gas company for a running engine. The steps here stand.')).toBeVisible();
    await crew.context.setOffline(false);
  });
  await test.step('the owner enters it on the company page', async () => {
    const { page } = owner;
    await page.goto('/company');
    const part = page.getByRole('region', { name: 'When a gas line is hit' });
    await expect(part.getByText(/^Nothing is entered yet/)).toBeVisible();
    await part.getByRole('button', { name: 'Enter what a gas company told us' }).click();
    await part.getByRole('textbox', { name: 'Gas company' }).fill('Alder Gas');
    await part.getByLabel('Its rule for a running engine').fill(rule);
    await part.getByLabel('Where it stands, or who told it').fill('Their safety sheet for excavators, page 2');
    await part.getByLabel('Read or heard on').fill('2026-03-01');
    await part.getByRole('button', { name: 'Show it to the crew' }).click();
    await expect(part.getByRole('heading', { name: 'Alder Gas' })).toBeVisible();
    await expect(part.getByRole('article').getByText(/^Their safety sheet for excavators, page 2, read Mar 1, 2026\. Entered by Ines Calloway/)).toBeVisible();
  });
  await test.step('a phone that takes it along shows it without a signal, beside the steps', async () => {
    const other = await signIn(browser, 'crew');
    await other.page.goto(`/jobs/${jobId}`);
    await readyForTheYard(other.page, jobId);
    await hitWithoutSignal(other.page);
    const hit = other.page.locator('.line-hit');
    await expect(hit.getByText('What Alder Gas told us')).toBeVisible();
    await expect(hit.getByText(rule)).toBeVisible();
    await expect(hit.getByText(/page 2, read Mar 1, 2026\. Entered by Ines Calloway/)).toBeVisible();
    await expect(hit.getByText('Start nothing. Touch no switch, no valve, no flame.')).toBeVisible();
    expect(other.complaints).toEqual([]);
    await other.context.close();
  });
  await test.step('it is taken back, and stays in the record', async () => {
    const part = owner.page.getByRole('region', { name: 'When a gas line is hit' });
    await part.getByRole('button', { name: 'Take back what Alder Gas told us' }).click();
    await part.getByLabel('Why, and who says so').fill('The sheet is not valid any more, says Alder Gas');
    await part.getByLabel('Read or heard on').fill('2026-03-02');
    await part.getByRole('button', { name: 'Take it back', exact: true }).click();
    await expect(part.getByText(/^Nothing is entered yet/)).toBeVisible();
    await part.getByText('Entered before').click();
    await expect(part.getByText(`Alder Gas: ${rule}`).first()).toBeVisible();
  });
  expect([crew.complaints, owner.complaints]).toEqual([[], []]);
  for (const { context } of [crew, owner]) await context.close();
});
