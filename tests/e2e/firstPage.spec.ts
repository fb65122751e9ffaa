import { expect, test, type Page, type Response } from '@playwright/test';
import { demoSignIns } from '../support/demo.ts';
import { phone, signIn } from './support/people.ts';

/** Script that travels to the page until it rests, as the service compressed it [bytes]. */
async function scriptOf(page: Page, open: () => Promise<unknown>): Promise<number> {
  const scripts: Response[] = [];
  page.on('response', (response) => {
    if (response.request().resourceType() === 'script' && response.ok()) scripts.push(response);
  });
  await open();
  await page.waitForLoadState('networkidle');
  await page.waitForFunction(() => document.querySelector('main') !== null && document.querySelector('[data-waiting]') === null);
  const sizes = await Promise.all(scripts.map(async (script) => (await script.request().sizes()).responseBodySize));
  expect(sizes.length).toBeGreaterThan(0);
  expect(sizes.every((size) => size > 0)).toBe(true);
  return sizes.reduce((sum, size) => sum + size, 0);
}

const kB = 1000;

test.describe('the script of the first page on a phone', () => {
  test("the crew's home is at most 180 kB", async ({ browser }) => {
    const signedIn = await signIn(browser, 'crew');
    const state = await signedIn.context.storageState();
    await signedIn.context.close();
    const context = await browser.newContext({ viewport: phone, storageState: state, serviceWorkers: 'block' });
    const page = await context.newPage();
    const size = await scriptOf(page, () => page.goto('/'));
    expect(size).toBeLessThanOrEqual(180 * kB);
    await context.close();
  });

  test("the customer's page is at most 150 kB", async ({ browser }) => {
    const link = demoSignIns(process.env.E2E_DATA_DIR ?? '').find(({ role }) => role === 'customer')?.link ?? '';
    const context = await browser.newContext({ viewport: phone, serviceWorkers: 'block' });
    const page = await context.newPage();
    const size = await scriptOf(page, () => page.goto(link));
    expect(size).toBeLessThanOrEqual(150 * kB);
    await context.close();
  });
});
