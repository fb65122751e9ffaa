import { expect, type Page } from '@playwright/test';

export interface YardShot {
  /** Chosen by hand; without it the page must ask for it by itself. */
  readonly choose?: string;
  /** What the page calls the point. */
  readonly point: string;
  /** As it stands on the rod, in feet. */
  readonly rod: string;
  /** Length of pipe in feet, of an outlet. */
  readonly pipe?: string;
  /** Level by hand from the bench mark, 100.00 ft; none for a backsight. */
  readonly level?: string;
}

/**
 * Fourteen shots over two set-ups, worked by hand in feet: instrument at 100.00 + 4.52 = 104.52, the turning point at
 * 104.52 - 4.70 = 99.82, instrument at 99.82 + 4.31 = 104.13, and back on the floor at 104.13 - 4.12 = 100.01: the loop
 * is off by 0.01 ft, which is 1/8 in, within what is allowed.
 * Gravity: collector 99.15 less 0.5 % of 140 ft is 98.45; the outlet at 99.35 stands 0.90 ft over it, and the swale 1.00 ft.
 */
export const shots: readonly YardShot[] = [
  { point: 'Finished floor', rod: '4.52' },
  { point: 'Sill', rod: '4.59', level: '99.93' },
  { point: 'Low spot', rod: '4.90', level: '99.62' },
  { point: 'Collector', rod: '5.37', level: '99.15' },
  { choose: 'Rim where it would spill', point: 'Rim', rod: '4.54', level: '99.98' },
  { choose: 'Ground', point: 'Ground', rod: '4.67', level: '99.85' },
  { choose: 'Ground', point: 'Ground 2', rod: '4.52', level: '100.00' },
  { choose: 'Ground', point: 'Ground 3', rod: '4.62', level: '99.90' },
  { choose: 'Move the instrument', point: 'Turning point', rod: '4.70', level: '99.82' },
  { point: 'Turning point', rod: '4.31' },
  { point: 'Outlet', rod: '4.78', pipe: '140', level: '99.35' },
  { choose: 'Candidate outlet', point: 'Outlet 2', rod: '4.73', pipe: '150', level: '99.40' },
  { choose: 'Ground', point: 'Ground 4', rod: '4.33', level: '99.80' },
  { point: 'Finished floor', rod: '4.12', level: '100.01' },
];

/** One shot by thumb: what the page asks for, the keys, and the level that it shows before it is kept. */
export async function shoot(page: Page, { choose, point, rod, pipe, level }: YardShot): Promise<void> {
  if (choose !== undefined) {
    await page.getByRole('button', { name: 'Something else' }).click();
    await page.getByRole('dialog').getByRole('button', { name: choose, exact: true }).click();
  }
  const card = page.getByRole('region', { name: 'Next shot' });
  await expect(card.locator('.next-what')).toContainText(point);
  const press = async (group: string, figure: string) => {
    const keys = card.getByRole('group', { name: group });
    for (const sign of figure) await keys.getByRole('button', { name: sign === '.' ? 'Decimal point' : sign, exact: true }).click();
  };
  await press('Rod reading', rod);
  if (pipe !== undefined) {
    await card.getByRole('textbox', { name: 'Pipe from the collector to here' }).click();
    await press('Pipe from the collector to here', pipe);
  }
  if (level !== undefined) await expect(card.locator('.yard-display').first()).toContainText(`level ${level}`);
  await card.getByRole('button', { name: 'Keep it' }).click();
  await expect(page.getByText(`${point} is on this phone`)).toBeAttached();
}

/** A visit of its own, whatever was shot here before. */
export async function anotherVisit(page: Page): Promise<void> {
  const another = page.getByRole('button', { name: 'Begin another visit' });
  const begin = page.getByRole('button', { name: 'Begin the book' });
  await expect(another.or(begin)).toBeVisible();
  if (await another.isVisible()) await another.click();
  await expect(begin).toBeVisible();
}

export const rows = (page: Page) => page.getByRole('region', { name: 'The book' }).getByRole('listitem');
