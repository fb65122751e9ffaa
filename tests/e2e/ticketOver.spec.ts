import { expect, test } from '@playwright/test';
import type { DigVerdict, Job, LocateTicket } from '@yardfall/contracts';
import { part } from './support/office.ts';
import { api, signIn, type Person } from './support/people.ts';
import { readyForTheYard } from './support/ready.ts';

const hour = 3_600_000;

async function digs(crew: Person): Promise<{ readonly id: string; readonly lastEnd: number }> {
  const { items } = (await api<{ readonly items: readonly Job[] }>(crew, 'GET', '/jobs?open=true&limit=100')).body;
  for (const { id, buildRevisionId } of items) {
    const { body } = await api<{ readonly items: readonly LocateTicket[]; readonly verdict: DigVerdict }>(crew, 'GET', `/jobs/${id}/locate-tickets`);
    if (buildRevisionId !== null && body.verdict.mayDig) return { id, lastEnd: Math.max(...body.items.map(({ expiresAt }) => Date.parse(expiresAt ?? ''))) };
  }
  throw new Error('no job of the demo may be dug');
}

test('a ticket that runs out while the phone has no signal stops the digging on the phone', async ({ browser }) => {
  test.setTimeout(180_000);
  const crew = await signIn(browser, 'crew');
  const { page, context } = crew;
  const { id, lastEnd } = await digs(crew);
  await page.goto(`/jobs/${id}#locates`);
  await expect((await part(page, 'Locates')).locator('.may-dig').first()).toBeVisible();
  await readyForTheYard(page, id);

  await context.setOffline(true);
  await page.clock.setFixedTime(lastEnd - hour);
  await page.reload();
  const locates = await part(page, 'Locates');
  await expect(locates.locator('.may-dig').first()).toBeVisible();

  // The same page, looked at again an hour later.
  await page.clock.setFixedTime(lastEnd);
  await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
  await expect(locates.getByText('Do not dig').first()).toBeVisible();
  await expect(locates.locator('.may-dig')).toHaveCount(0);
  await expect(locates.getByText(/: expired /).first()).toBeVisible();
  expect(crew.complaints).toEqual([]);
  await context.close();
});
