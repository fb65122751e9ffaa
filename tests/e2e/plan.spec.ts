import { readFileSync } from 'node:fs';
import { expect, test, type Browser, type Locator } from '@playwright/test';
import type { DesignDocument } from '@yardfall/calc';
import type { Revision } from '@yardfall/contracts';
import { inRoot } from '../../tools/paths.mjs';
import { issueDesign } from './support/design.ts';
import { jobFor, part } from './support/office.ts';
import { api, signIn, type Person } from './support/people.ts';
import { areaOf, bar, beginPlan, hollowVolume, outlines, pointList, sitePicture, tap, volumeOf } from './support/plan.ts';

/** The demo site's design, drawn on the plan and moved on the section: once by pointer, once by keys alone. */
test.describe.serial('the plan and the section of a design', () => {
  const title = `Plan ${String(Date.now() % 100_000)}`;
  let jobId = '';
  const sound = JSON.parse(readFileSync(inRoot('prisma', 'seed', 'sites', 'tern-hollow.json'), 'utf8')) as DesignDocument;
  /** The same design before anything was measured: every surface one square meter. */
  const unmeasured: DesignDocument = { ...sound, site: { ...sound.site, plan: null, spotLevels: [], catchments: sound.site.catchments.map((catchment) => ({ ...catchment, area: 1 })) } };

  async function draft(browser: Browser, name: string): Promise<{ readonly person: Person; readonly design: Locator; readonly revision: Revision }> {
    const person = await signIn(browser, 'estimator');
    const { status, body } = await api<Revision>(person, 'POST', `/jobs/${jobId}/designs`, { name, document: unmeasured, fromRevisionId: null });
    expect(status).toBe(201);
    await person.page.goto(`/jobs/${jobId}`);
    const design = await part(person.page, 'Design');
    await expect(design.getByText('Saved in the office')).toBeVisible();
    return { person, design, revision: body };
  }
  const documentOf = async (person: Person, { id }: Revision): Promise<DesignDocument> => (await api<Revision>(person, 'GET', `/jobs/${jobId}/revisions/${id}`)).body.document as DesignDocument;
  const saved = (design: Locator) => expect(design.getByText('Saved in the office')).toBeVisible({ timeout: 30_000 });

  test('a job for it', async ({ browser }) => {
    const estimator = await signIn(browser, 'estimator');
    jobId = await jobFor(estimator, title);
    await estimator.context.close();
  });

  test('by pointer: traced over a picture of known length, the ground from a point list, a level dragged, and issued', async ({ browser }) => {
    test.setTimeout(240_000);
    const { person, design, revision } = await draft(browser, 'By pointer');
    const { page } = person;
    const plan = await beginPlan(design);

    await test.step('the picture is tied to a known length', async () => {
      await plan.locator('input[type=file][accept="image/jpeg,image/png"]').setInputFiles({ name: 'above.jpg', mimeType: 'image/jpeg', buffer: await sitePicture() });
      await expect(plan.getByText('This picture has no known length yet')).toBeVisible();
      await plan.getByRole('application').scrollIntoViewIfNeeded();
      for (const end of bar) await tap(page, end);
      await plan.getByLabel('True length between the two places').fill(`${String(10 / 0.3048)}'`);
      await plan.getByRole('button', { name: 'Tie it' }).click();
      await expect(plan.getByText('This picture has no known length yet')).toHaveCount(0);
    });

    await test.step('outlines are traced and measure the surfaces', async () => {
      for (const { use, measures, corners } of outlines) {
        await plan.getByRole('radio', { name: 'Outline' }).check();
        await plan.getByLabel('What it is').selectOption({ label: use });
        await plan.getByRole('application').scrollIntoViewIfNeeded();
        for (const corner of corners) await tap(page, corner);
        await plan.getByRole('button', { name: 'Close the outline' }).click();
        await plan.getByLabel('Measures').selectOption({ label: measures });
      }
      await saved(design);
      const { site } = await documentOf(person, revision);
      for (const { measures, corners } of outlines) {
        const area = site.catchments.find(({ name }) => name === measures)?.area ?? 0;
        expect(Math.abs(area / areaOf(corners) - 1), measures).toBeLessThan(0.01);
      }
    });

    await test.step('the low spot comes from the surveyed points', async () => {
      await plan.getByText("Points from a surveyor's list").first().click();
      await plan.locator('input[type=file][accept*=".csv"]').setInputFiles({ name: 'points.csv', mimeType: 'text/csv', buffer: Buffer.from(pointList) });
      await expect(plan.getByText('8 points')).toBeVisible();
      await plan.getByRole('button', { name: 'Put these points on the plan' }).click();
      await plan.getByRole('button', { name: 'Take this for Patio low spot' }).click();
      await saved(design);
      const [spot] = (await documentOf(person, revision)).site.lowSpots;
      expect(Math.abs(volumeOf(spot?.stageArea ?? []) / hollowVolume - 1)).toBeLessThan(0.02);
      expect(spot?.rimLevel).toBeCloseTo(99.98 * 0.3048, 6);
    });

    await test.step('the pump off level goes down under the hand', async () => {
      const before = (await documentOf(person, revision)).system.parts.find(({ kind }) => kind === 'basin');
      const handle = design.getByRole('slider', { name: /: Pump off$/ });
      await handle.scrollIntoViewIfNeeded();
      const box = await handle.boundingBox();
      if (!box || before?.kind !== 'basin') throw new Error('the section has the basin');
      await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
      await page.mouse.down();
      await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2 + 4, { steps: 4 });
      await page.mouse.up();
      await saved(design);
      const after = (await documentOf(person, revision)).system.parts.find(({ kind }) => kind === 'basin');
      expect(after?.kind === 'basin' && after.offLevel < before.offLevel && after.offLevel > before.offLevel - 0.5).toBe(true);
      await page.reload();
      await part(page, 'Design');
    });

    await issueDesign(page);
    expect(person.complaints).toEqual([]);
    await person.context.close();
  });

  test('by keys alone: outlines by figures, a level by the arrows, and issued', async ({ browser }) => {
    test.setTimeout(240_000);
    const { person, design, revision } = await draft(browser, 'By keys');
    const { page } = person;
    const fold = design.locator('details', { has: page.getByText('Plan', { exact: true }) });
    await fold.locator('summary').first().press('Enter');
    await fold.getByRole('button', { name: 'Draw the plan' }).press('Enter');
    const type = async (field: Locator, text: string) => {
      await field.focus();
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.type(text);
    };
    const sheet = fold.getByRole('application');
    await expect(sheet).toBeVisible();
    const sizes = [['Paving or slab', 'Patio', '22', '16'], ['Roof', 'Roof, east half', '28', '10'], ['Roof', 'Roof, west half', '28', '10'], ['Lawn', 'Back lawn', '50', '22']] as const;
    for (const [at, [use, measures, width, height]] of sizes.entries()) {
      await fold.getByRole('radio', { name: 'Outline' }).press('Space');
      await fold.getByLabel('What it is').focus();
      await page.keyboard.type(use);
      await type(fold.getByLabel(/^To the right of the origin/), String(at * 60));
      await type(fold.getByLabel(/^Up from the origin/), '0');
      await type(fold.getByLabel(/^Width/), width);
      await type(fold.getByLabel(/^Height on the plan/), height);
      await fold.getByRole('button', { name: 'Draw this rectangle' }).press('Enter');
      await fold.getByLabel('Measures').focus();
      await page.keyboard.type(measures);
    }
    await saved(design);
    const drawn = await documentOf(person, revision);
    for (const [, measures, width, height] of sizes) {
      expect(drawn.site.catchments.find(({ name }) => name === measures)?.area, measures).toBeCloseTo(Number(width) * Number(height) * 0.3048 ** 2, 3);
    }

    await test.step('a chosen shape moves by arrows, and its last move is taken back and done again', async () => {
      const first = drawn.site.plan?.shapes.at(-1)?.points[0];
      await sheet.press('Shift+ArrowRight');
      await saved(design);
      const moved = (await documentOf(person, revision)).site.plan?.shapes.at(-1)?.points[0];
      expect((moved?.x ?? 0) - (first?.x ?? 0)).toBeCloseTo(0.3048, 9);
      await design.getByRole('button', { name: 'Undo' }).press('Enter');
      await saved(design);
      expect((await documentOf(person, revision)).site.plan?.shapes.at(-1)?.points[0]).toEqual(first);
      await design.getByRole('button', { name: 'Do it again' }).press('Enter');
      await saved(design);
      expect((await documentOf(person, revision)).site.plan?.shapes.at(-1)?.points[0]).toEqual(moved);
    });

    await test.step('a level of the section by the arrows', async () => {
      const before = drawn.system.parts.find(({ kind }) => kind === 'basin');
      await design.getByRole('slider', { name: /: Pump off$/ }).press('ArrowDown');
      await saved(design);
      const after = (await documentOf(person, revision)).system.parts.find(({ kind }) => kind === 'basin');
      if (before?.kind !== 'basin' || after?.kind !== 'basin') throw new Error('the design has its basin');
      expect(before.offLevel - after.offLevel).toBeCloseTo(0.01 * 0.3048, 9);
    });

    await expect(design.locator('.findings .mark-stop')).toHaveCount(0, { timeout: 60_000 });
    const open = design.locator('.findings').getByRole('button', { name: 'Accept this caution in my name' });
    for (let left = await open.count(); left > 0; left = await open.count()) {
      await open.first().press('Enter');
      await type(design.getByLabel('Why it is acceptable here'), 'Looked at in the yard, acceptable here.');
      await page.keyboard.press('Enter');
      await expect(design.getByLabel('Why it is acceptable here')).toHaveCount(0);
    }
    await design.getByRole('button', { name: 'Issue this design' }).press('Enter');
    await expect(design.getByText(/Issued by/)).toBeVisible({ timeout: 60_000 });
    expect(person.complaints).toEqual([]);
    await person.context.close();
  });
});
