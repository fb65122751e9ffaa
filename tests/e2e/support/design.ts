import { expect, type Locator, type Page } from '@playwright/test';
import { part } from './office.ts';

async function addPart(design: Locator, kind: string, drainsTo: string | null): Promise<void> {
  await design.getByLabel('Kind of part').selectOption({ label: kind });
  await design.getByRole('button', { name: 'Add the part' }).click();
  await expect(design.getByRole('form', { name: kind, exact: true })).toBeVisible();
  if (drainsTo !== null) await design.getByLabel('Drains to').selectOption({ label: drainsTo });
}

async function addSurface(design: Locator, nth: number, kind: string, area: string, share: string, goesTo: string): Promise<void> {
  await design.getByRole('button', { name: 'Add a surface' }).click();
  const row = design.locator('.catchment').nth(nth);
  await row.getByLabel('Kind of surface').selectOption({ label: kind });
  await row.getByRole('textbox', { name: 'Name', exact: true }).fill(`${kind} ${String(nth + 1)}`);
  await row.getByLabel('Area').fill(area);
  await row.getByLabel('Share that runs off').fill(share);
  await row.getByLabel('Goes to').selectOption({ label: goesTo });
}

async function clearOutlet(design: Locator, name: string): Promise<void> {
  await design.locator('.part-list').getByRole('button', { name: new RegExp(`^${name}`) }).click();
  const form = design.getByRole('form', { name, exact: true });
  for (const select of await form.locator('.part-questions select').all()) await select.selectOption('yes');
}

const saved = (design: Locator) => expect(design.getByText(/Saved in the office/)).toBeVisible({ timeout: 30_000 });

/** 4. The estimator lays out the system and moves the roof water to its own line. */
export async function drawDesign(page: Page): Promise<void> {
  const design = await part(page, 'Design');
  await design.getByRole('button', { name: 'Start from the levels and the rain' }).click();
  await design.getByRole('button', { name: 'Lay out channel, basin and pump' }).click();
  await saved(design);
  await addPart(design, 'Outlet', null);
  await design.getByRole('form', { name: 'Outlet', exact: true }).getByRole('textbox', { name: 'Name', exact: true }).fill('Roof lid');
  await addPart(design, 'Sealed roof line', 'Roof lid');
  await addPart(design, 'Leader', 'Sealed roof line');
  await addPart(design, 'Gutter', 'Leader');
  const surfaces = design.getByText('Surfaces that feed the low spot').first();
  if (!(await design.getByRole('button', { name: 'Add a surface' }).isVisible())) await surfaces.click();
  await addSurface(design, 0, 'Paving', '352', '0.95', 'Low spot');
  await addSurface(design, 1, 'Lawn', '1100', '0.3', 'Low spot');
  await addSurface(design, 2, 'Roof', '280', '0.95', 'Gutter');
  await saved(design);
  await clearOutlet(design, 'Emitter on the lawn');
  await clearOutlet(design, 'Roof lid');
  await design.getByText('Cuts, trenches, power and what stands near').click();
  await design.getByRole('button', { name: 'Take cuts and trenches from the parts' }).click();
  await design.getByRole('button', { name: 'Add power for the pump' }).click();
  await saved(design);
}

/** 4. Each caution is accepted by name, then the office freezes the revision with its numbers. */
export async function issueDesign(page: Page): Promise<void> {
  const design = await part(page, 'Design');
  await expect(design.getByRole('heading', { name: 'The 25-year storm' })).toBeVisible({ timeout: 60_000 });
  await expect(design.locator('.findings .mark-stop')).toHaveCount(0, { timeout: 60_000 });
  const open = design.locator('.findings').getByRole('button', { name: 'Accept this caution in my name' });
  for (let left = await open.count(); left > 0; left = await open.count()) {
    await open.first().click();
    await design.getByLabel('Why it is acceptable here').fill('Looked at in the yard, acceptable here.');
    await design.locator('.findings form').getByRole('button', { name: 'Accept this caution in my name' }).click();
    await expect(design.getByLabel('Why it is acceptable here')).toHaveCount(0);
  }
  await design.getByRole('button', { name: 'Issue this design' }).click();
  await expect(design.getByText(/Issued by/)).toBeVisible({ timeout: 60_000 });
}
