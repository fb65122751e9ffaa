import { expect, type Locator, type Page } from '@playwright/test';
import { isInside, type ChecklistItem } from '@yardfall/contracts';
import type { Hand, Picture } from './hand.ts';

type Measure = ChecklistItem['requirement']['measures'][number];

export interface Day {
  readonly hand: Hand;
  readonly items: ReadonlyMap<string, ChecklistItem>;
  readonly picture: (item: ChecklistItem) => Picture;
  /** Told when the phone has shown that it keeps the photo. */
  readonly kept: (picture: Picture, item: ChecklistItem) => void;
}

export const dialogOf = (page: Page): Locator => page.getByRole('dialog');
export const screenOf = (page: Page): Locator => dialogOf(page).locator('.item-screen');

/** Key of the step that is on screen. */
export async function stepOnScreen(page: Page): Promise<string> {
  return (await screenOf(page).getAttribute('data-item')) ?? '';
}

/** Gives everything that the step on screen asks of the crew, and of the steps that one picture shows with it. */
export async function workStep(day: Day): Promise<string[]> {
  const screen = screenOf(day.hand.page);
  const key = await stepOnScreen(day.hand.page);
  const start = screen.getByRole('button', { name: /^Start/ });
  if (await start.isVisible()) {
    await day.hand.tap(start);
    await expect(start).toBeHidden();
  }
  const together = await screen.locator('.together').evaluateAll((all) => all.map((one) => one.getAttribute('data-item') ?? ''));
  await photos(day, screen, key);
  // A companion has a screen part of its own; what is left is the step itself.
  for (const one of [key, ...together]) await give(day, one === key ? screen : screen.locator(`.together[data-item="${one}"]`), one, one !== key);
  return [key, ...together];
}

/** What stands on the screen for one step; the parts of its companions are left out. */
type At = (css: string) => Locator;

async function give(day: Day, within: Locator, key: string, companion: boolean): Promise<void> {
  const item = itemOf(day, key);
  const at: At = (css) => within.locator(companion ? css : `${css}:not(.together *)`);
  if (companion) await photos(day, within, key);
  if (item.template === 'E1') await profile(day, at);
  else if (item.template === 'J7') await ties(day, at);
  else for (const measure of item.requirement.evidence.includes('value') ? item.requirement.measures : []) await measureOne(day, at, measure);
  await papers(day, at, item);
  // One press records the figures and the tick.
  const done = at('.finish').getByRole('button', { name: 'Done', exact: true });
  if (!(await done.isVisible())) return;
  await day.hand.tap(done);
  // A companion that is done leaves the screen.
  await expect(done).toHaveCount(0);
}

/** As many as the step still wants. */
async function photos(day: Day, within: Locator, key: string): Promise<void> {
  const item = itemOf(day, key);
  const count = within.getByText(/^Photos: \d+ of \d+$/).first();
  if (!(await count.isVisible())) return;
  const also = screenOf(day.hand.page).locator(`[data-also="${key}"]`);
  if (await also.isVisible()) {
    await day.hand.tap(also);
    await expect(also).toHaveCount(0);
  }
  for (;;) {
    const [taken = 0, needed = 0] = ((await count.textContent()) ?? '').match(/\d+/g)?.map(Number) ?? [];
    if (taken >= needed) return;
    const picture = day.picture(item);
    await day.hand.photograph(within.locator('input[type=file]').first(), picture);
    await expect(count).toHaveText(new RegExp(`^Photos: ${String(taken + 1)} of`), { timeout: 30_000 });
    day.kept(picture, item);
  }
}

async function measureOne(day: Day, at: At, measure: Measure): Promise<void> {
  const figure = at(`.step-figure[data-measure="${measure.name}"]`);
  if ((await figure.count()) === 0 || (await figure.locator('.recorded').isVisible())) return;
  if (measure.quantity === 'check') {
    await day.hand.tap(figure.locator('label').filter({ hasText: /^As planned$|^It is on the truck$/ }));
    return;
  }
  await day.hand.type(figure.locator('input'), typed(measure));
  await expect(figure.locator('.verdict')).toBeVisible();
}

/** The pipe is shot as designed: both ends and the joints, which stand there already. */
async function profile(day: Day, at: At): Promise<void> {
  const form = at('[role=group]').filter({ has: day.hand.page.locator('.shots') });
  await expect(form).toBeVisible({ timeout: 60_000 });
  for (const shot of await form.locator('fieldset').all()) {
    const designed = /Designed here: ([\d.]+)/.exec((await shot.textContent()) ?? '')?.[1] ?? '';
    await day.hand.type(shot.getByLabel(/^Invert/), designed);
  }
}

/** Each buried part by its two tapes, and by its level where no earlier step shot it. */
async function ties(day: Day, at: At): Promise<void> {
  for (const part of await at('.tied').all()) {
    if (await part.locator('.tied-complete').isVisible()) continue;
    for (const field of await part.locator('.tied-fields input').all()) await day.hand.type(field, "12.25'");
  }
}

async function papers(day: Day, at: At, { requirement, template }: ChecklistItem): Promise<void> {
  const { hand } = day;
  const wants = new Set<string>(requirement.evidence);
  for (const name of wants.has('text') ? (requirement.texts ?? []) : []) {
    if (name.startsWith('line:')) {
      const line = at(`.own-line[data-text="${name}"]`);
      await hand.tap(line.locator('label').filter({ hasText: /^Not there$|^No$/ }));
      await expect(line.getByRole('radio', { name: /^Not there$|^No$/ })).toBeChecked();
      continue;
    }
    const plate = at(`[data-text="${name}"]`);
    if (!(await plate.locator('.verdict').isVisible())) await hand.type(plate.locator('input'), 'SP50-A1774');
  }
  const reference = at('input[name=reference]');
  if (wants.has('document') && template !== 'J1') await hand.type(reference, 'NC-0118-77');
  const unsigned = at('form').filter({ has: hand.page.locator('.sign-pad') });
  for (let left = await unsigned.count(); left > 0; left = await unsigned.count()) {
    await sign(hand, unsigned.first());
    await expect(unsigned).toHaveCount(left - 1);
  }
}

async function sign(hand: Hand, form: Locator): Promise<void> {
  await hand.type(form.locator('input[name=name]'), 'Ilse Varga');
  const licence = form.locator('input[name=licence]');
  if (await licence.isVisible()) await hand.type(licence, 'EL-20417');
  await hand.sign(form.locator('.sign-pad'));
  await hand.tap(form.getByRole('checkbox').last());
  await hand.tap(form.getByRole('button', { name: 'Sign', exact: true }));
}

function itemOf(day: Day, key: string): ChecklistItem {
  const item = day.items.get(key);
  if (item === undefined) throw new Error(`the list has no ${key}`);
  return item;
}

const FOOT = 0.3048;
const INCH = 0.0254;
const GALLON = 0.003785411784;

/** As the crew would read it off: no more places than keep it inside its limits. */
export function typed(measure: Measure): string {
  const unit = { level: FOOT, length: FOOT, height: INCH, volume: GALLON, flow: GALLON / 60, slope: 1 / 12, count: 1, minutes: 60, seconds: 1, share: 0.01, number: 1, check: 1 }[measure.quantity];
  for (let places = 0; places < 5; places += 1) {
    for (const way of [Math.round, Math.ceil, Math.floor]) {
      const text = (way((measure.target / unit) * 10 ** places) / 10 ** places).toFixed(places);
      if (isInside(measure, Number(text) * unit)) return measure.quantity === 'level' || measure.quantity === 'length' ? `${text}'` : text;
    }
  }
  throw new Error(`nothing can be typed for ${measure.name}`);
}
