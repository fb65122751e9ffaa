import { expect, test } from '@playwright/test';
import { pages } from './pages.ts';
import { faultsOf } from './support/axe.ts';
import { ternHollow } from './support/bigYard.ts';
import { openYard } from './support/drag.ts';
import { part } from './support/office.ts';
import { phone, signIn, type MemberKind } from './support/people.ts';

for (const role of ['owner', 'estimator', 'crew'] satisfies MemberKind[]) {
  test(`the first pages of the ${role} have no fault of WCAG 2.2 A and AA that a program can find`, async ({ browser }) => {
    const { page, context } = await signIn(browser, role);
    for (const { name, path } of pages.filter((one) => one.role === role && !one.path.includes('{'))) {
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
        await page.goto(path);
        await page.waitForLoadState('networkidle');
        await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
        expect.soft(await faultsOf(page), `${name}, ${colorScheme}`).toEqual([]);
      }
    }
    await context.close();
  });
}

test("the estimator's table has none either: levels, a draft with everything open on it, the yard", async ({ browser }) => {
  test.setTimeout(240_000);
  const { person: { page, context }, design, jobId } = await openYard(browser, `Table ${String(Date.now() % 100_000)}`, ternHollow());
  await design.locator('.part-list').getByRole('button', { name: /^Patio channel/ }).click();
  await part(page, 'Levels');
  await page.getByRole('button', { name: 'Rain', exact: true }).click();
  await page.evaluate(() => document.querySelectorAll<HTMLDetailsElement>('main details').forEach((fold) => { fold.open = true; }));
  await page.waitForLoadState('networkidle');
  expect(await page.locator('main details[open]').count()).toBeGreaterThan(5);
  expect.soft(await faultsOf(page), 'draft at a desk').toEqual([]);
  await page.setViewportSize(phone);
  expect.soft(await faultsOf(page), 'draft on a phone').toEqual([]);
  await page.goto(`/jobs/${jobId}/yard`);
  await page.waitForLoadState('networkidle');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  expect.soft(await faultsOf(page), 'in the yard').toEqual([]);
  await context.close();
});
