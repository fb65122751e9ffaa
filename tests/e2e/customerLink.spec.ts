import { expect, test } from '@playwright/test';
import { demoSignIns } from '../support/demo.ts';
import { openBrowser, phone } from './support/people.ts';

test("a customer's link opens the page also when the answer to who was there before comes last", async ({ browser }) => {
  const link = demoSignIns(process.env.E2E_DATA_DIR ?? '').find(({ role }) => role === 'customer')?.link ?? '';
  const { page, context } = await openBrowser(browser, phone);
  const opened = page.waitForResponse((answer) => answer.url().endsWith('/api/v1/customer-session'));
  let late = 0;
  await page.route('**/api/v1/session', async (route) => {
    if (route.request().method() !== 'GET') return route.continue();
    const answer = await route.fetch();
    await opened;
    await new Promise((resolve) => setTimeout(resolve, 1500));
    late += answer.status() === 401 ? 1 : 0;
    // The page may not wait for it any more.
    await route.fulfill({ response: answer }).catch(() => undefined);
    return undefined;
  });
  await page.goto(link);
  await expect.poll(() => late).toBe(1);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Your drain');
  await expect(page.getByText('used already')).toHaveCount(0);
  await context.close();
});
