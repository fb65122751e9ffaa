import { expect, test } from '@playwright/test';
import { signInOf } from '../support/demo.ts';
import { desk, openBrowser } from './support/people.ts';

test('a member who signs in stays signed in also when the answer to who was there before comes last', async ({ browser }) => {
  const { email, password } = signInOf(process.env.E2E_DATA_DIR ?? '', 'estimator');
  const { page, context, complaints } = await openBrowser(browser, desk);
  const signedIn = page.waitForResponse((answer) => answer.url().endsWith('/api/v1/session') && answer.request().method() === 'POST');
  let asked = 0;
  let late = 0;
  let done = (): void => undefined;
  const looked = new Promise<void>((resolve) => { done = resolve; });
  await page.route('**/api/v1/session', async (route) => {
    if (route.request().method() !== 'GET') return route.continue();
    const answer = await route.fetch();
    // Whoever would ask again after it is not answered while the page is looked at.
    if (late > 0) await looked;
    asked += 1;
    // What is asked ahead of the page counts only when it says who is there: the page's own question is the late one.
    if (answer.status() === 401 && asked > 1) {
      await signedIn;
      await new Promise((resolve) => setTimeout(resolve, 1500));
      late += 1;
    }
    // The page may not wait for it any more.
    await route.fulfill({ response: answer }).catch(() => undefined);
    return undefined;
  });
  await page.goto('/sign-in');
  await page.getByLabel('E-mail').fill(email ?? '');
  await page.getByLabel('Password').fill(password ?? '');
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect.poll(() => late).toBeGreaterThan(0);
  // Long enough for the late answer to be read and shown.
  await page.waitForTimeout(1000);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('What needs you next');
  expect(new URL(page.url()).pathname).toBe('/');
  done();
  expect(complaints).toEqual([]);
  await context.close();
});
