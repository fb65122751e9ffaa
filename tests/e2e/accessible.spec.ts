import { expect, test, type Locator, type Page } from '@playwright/test';
import type { Revision } from '@yardfall/contracts';
import { pages } from './pages.ts';
import { faultsOf } from './support/axe.ts';
import { ternHollow } from './support/bigYard.ts';
import { openYard } from './support/drag.ts';
import { part } from './support/office.ts';
import { api, desk, phone, signIn, type MemberKind } from './support/people.ts';

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

test("the estimator's table has none either, and works from the keyboard: comparison, edits, print, long work, levels, the yard, the library", async ({ browser }) => {
  test.setTimeout(240_000);
  const drawn = ternHollow();
  const { person, design, jobId, revisionId } = await openYard(browser, `Table ${String(Date.now() % 100_000)}`, drawn);
  const { page, context } = person;
  const within = 'section[aria-labelledby="design"]';

  await test.step('another variant, an edit and a study to look at', async () => {
    const wider = { ...drawn, title: 'Wider', system: { parts: drawn.system.parts.map((one) => (one.kind === 'basin' ? { ...one, diameter: 1 } : one)) } };
    const other = await api<Revision>(person, 'POST', `/jobs/${jobId}/designs`, { name: 'Wider basin', document: wider, fromRevisionId: null });
    const edit = { kind: 'replace', path: ['site', 'catchments', '@C1', 'area'], value: 40 };
    await api(person, 'POST', `/jobs/${jobId}/revisions/${revisionId}/operations`, { base: 1, operations: [edit] });
    expect((await api(person, 'POST', `/jobs/${jobId}/revisions/${revisionId}/studies/options`, { picks: [], diversions: ['G1'] })).status).toBe(202);
    expect(other.status).toBe(201);
    await page.reload();
    await part(page, 'Design');
    await design.getByRole('button', { name: 'Yard, revision 1' }).focus();
    await page.keyboard.press('Enter');
  });

  await test.step('folds open, and what they hold is used, without a pointer', async () => {
    await design.getByLabel('Compare with').focus();
    await page.keyboard.press('ArrowDown');
    await expect(design.getByRole('heading', { name: /From Wider basin, revision 1/ })).toBeVisible();
    await unfold(page, design.getByText('Print to scale'));
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await expect(design.getByRole('link', { name: 'Print the section' })).toBeFocused();
    await unfold(page, design.getByText('Who changed what'));
    await expect(design.getByRole('row', { name: /^Patio: Area became 431/ })).toBeVisible();
    await design.getByRole('button', { name: /^As it was after this: Patio/ }).focus();
    await page.keyboard.press('Enter');
    await expect(design.getByText('Saved in the office')).toBeVisible();
    await unfold(page, design.getByText('Ask for a new one').first());
    await design.getByRole('checkbox', { name: 'East gutter' }).focus();
    await page.keyboard.press('Space');
    await expect(design.getByRole('button', { name: 'Look for the cheapest' })).toBeEnabled();
    await expect(design.getByRole('img', { name: /price|cost|cheap/i }).or(design.getByText('Designs on the line, from the cheapest'))).toBeVisible({ timeout: 90_000 });
  });

  await test.step('at a desk and on a phone', async () => {
    await design.locator('.part-list').getByRole('button', { name: /^Patio channel/ }).click();
    await page.evaluate(() => document.querySelectorAll<HTMLDetailsElement>('main details').forEach((fold) => { fold.open = true; }));
    expect(await page.locator('main details[open]').count()).toBeGreaterThan(8);
    expect.soft(await faultsOf(page, { within, only: 'structure' }), 'draft at a desk').toEqual([]);
    await page.setViewportSize(phone);
    expect.soft(await faultsOf(page, { within, only: 'size' }), 'draft on a phone').toEqual([]);
    expect.soft(await page.evaluate(() => document.documentElement.scrollWidth), 'as wide as the phone').toBe(phone.width);
  });

  await test.step('levels, the yard, what waits, and the library with its dialog', async () => {
    await page.setViewportSize(desk);
    await part(page, 'Levels');
    expect.soft(await faultsOf(page, { within: 'section[aria-labelledby="levels"]', only: 'structure' }), 'levels').toEqual([]);
    for (const path of [`/jobs/${jobId}/yard`, '/waits']) {
      await page.goto(path);
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
      expect.soft(await faultsOf(page, { within: 'main' }), path).toEqual([]);
    }
    await page.goto('/company');
    const opener = page.getByRole('button', { name: 'Add one' });
    await opener.focus();
    await page.keyboard.press('Enter');
    await expect(page.getByRole('dialog')).toBeVisible();
    expect.soft(await faultsOf(page, { within: 'dialog[open]' }), 'an entry of the library').toEqual([]);
    await page.keyboard.press('Escape');
    await expect(opener).toBeFocused();
  });
  await context.close();
});

async function unfold(page: Page, summary: Locator): Promise<void> {
  await summary.focus();
  await page.keyboard.press('Enter');
}
