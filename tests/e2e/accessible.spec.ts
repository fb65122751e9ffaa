import { AxeBuilder } from '@axe-core/playwright';
import { expect, test } from '@playwright/test';
import { pages } from './pages.ts';
import { signIn, type MemberKind } from './support/people.ts';

const standard = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

for (const role of ['owner', 'estimator', 'crew'] satisfies MemberKind[]) {
  test(`the first pages of the ${role} have no fault of WCAG 2.2 A and AA that a program can find`, async ({ browser }) => {
    const { page, context } = await signIn(browser, role);
    for (const { name, path } of pages.filter((one) => one.role === role && !one.path.includes('{'))) {
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
        await page.goto(path);
        await page.waitForLoadState('networkidle');
        await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
        const { violations } = await new AxeBuilder({ page }).withTags(standard).analyze();
        const faults = violations.flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary }) => `${id} at ${target.join(' ')}: ${failureSummary ?? ''}`));
        expect.soft(faults, `${name}, ${colorScheme}`).toEqual([]);
      }
    }
    await context.close();
  });
}
