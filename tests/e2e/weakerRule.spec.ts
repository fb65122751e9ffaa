import { expect, test } from '@playwright/test';
import { type Me, permitKinds } from '@yardfall/contracts';
import { faultsOf } from './support/axe.ts';
import { openBrowser, phone, type Person } from './support/people.ts';
import { done, member, notNeeded, soldJob } from './support/readyJob.ts';

/** The rules of the company are everybody's here: what was there before stands again afterwards. */
async function withRule(owner: Person, changes: readonly object[], work: () => Promise<void>): Promise<void> {
  const set = async (checklist: object) => {
    const { version } = await done<{ readonly version: number }>(owner, 'GET', '/company');
    const answer = await owner.context.request.patch('/api/v1/company', { headers: { 'idempotency-key': crypto.randomUUID(), 'if-match': `"${String(version)}"` }, data: { checklist } });
    expect(answer.status(), await answer.text()).toBe(200);
  };
  await set({ changes, own: [] });
  try {
    await work();
  } finally {
    await set({ changes: [], own: [] });
  }
}

test("the customer's page says where the company asks for fewer photos, in whose name and why", async ({ browser }) => {
  test.setTimeout(180_000);
  const owner = await member(browser, 'owner');
  const { jobId, offerId, link } = await soldJob(browser, `Weaker ${String(Date.now() % 100_000)}`);
  await done(owner, 'POST', `/jobs/${jobId}/permits`, { answers: permitKinds.map((kind) => ({ kind, ...notNeeded })) });
  const why = 'One wide photo shows both ends of the grate.';
  await withRule(owner, [{ item: 'D4', leftOut: false, what: '', adds: '', photos: 1, why }], () => done(owner, 'POST', `/jobs/${jobId}/release`, { offerId }));
  const { name } = await done<Me>(owner, 'GET', '/session');

  const customer = await openBrowser(browser, phone);
  await customer.page.goto(link);
  const told = customer.page.getByRole('region', { name: 'Where we ask for less than the list, and why' });
  await expect(told.getByRole('listitem')).toHaveText(new RegExp(`^Grate .*One photo; the list asks for 2\\.${why}${name}$`));
  expect(await faultsOf(customer.page, { within: 'section[aria-labelledby="weaker"]' })).toEqual([]);
  expect(customer.complaints).toEqual([]);
  await customer.context.close();
  await owner.context.close();
});
