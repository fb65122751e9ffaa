import { expect, test, type Page, type Response } from '@playwright/test';
import { demoSignIns } from '../support/demo.ts';
import { phone, signIn } from './support/people.ts';

/** Script that travels to the page until it can be used, as the service compressed it [bytes]. What comes when the page rests is not among it. */
async function scriptOf(page: Page, open: () => Promise<unknown>, usable: string): Promise<{ readonly files: number; readonly bytes: number }> {
  const scripts: Response[] = [];
  page.on('response', (response) => {
    if (response.request().resourceType() === 'script' && response.ok()) scripts.push(response);
  });
  await open();
  await page.locator(usable).first().waitFor();
  const first = [...scripts];
  const sizes = await Promise.all(first.map(async (script) => (await script.request().sizes()).responseBodySize));
  expect(sizes.length).toBeGreaterThan(0);
  expect(sizes.every((size) => size > 0)).toBe(true);
  return { files: sizes.length, bytes: sizes.reduce((sum, size) => sum + size, 0) };
}

const kB = 1000;

test.describe('the script of the first page on a phone', () => {
  test("the crew's home is at most 180 kB", async ({ browser }) => {
    const signedIn = await signIn(browser, 'crew');
    const state = await signedIn.context.storageState();
    await signedIn.context.close();
    const context = await browser.newContext({ viewport: phone, storageState: state, serviceWorkers: 'block' });
    const page = await context.newPage();
    const { files, bytes } = await scriptOf(page, () => page.goto('/'), '.next-item button:enabled');
    expect(bytes).toBeLessThanOrEqual(180 * kB);
    // They come eight at the time of writing; a slow line waits a turn for every six more.
    expect(files).toBeLessThanOrEqual(10);
    await context.close();
  });

  test("the customer's page is at most 150 kB", async ({ browser }) => {
    const link = demoSignIns(process.env.E2E_DATA_DIR ?? '').find(({ role }) => role === 'customer')?.link ?? '';
    const context = await browser.newContext({ viewport: phone, serviceWorkers: 'block' });
    const page = await context.newPage();
    const { bytes } = await scriptOf(page, () => page.goto(link), '.drawing-frame svg');
    expect(bytes).toBeLessThanOrEqual(150 * kB);
    await context.close();
  });
});
