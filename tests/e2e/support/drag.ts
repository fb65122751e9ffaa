import { expect, type Browser, type Locator, type Page } from '@playwright/test';
import type { Revision } from '@yardfall/contracts';
import { bigYard } from './bigYard.ts';
import { jobFor, part } from './office.ts';
import { api, signIn, type Person } from './people.ts';

export interface OpenDraft {
  readonly person: Person;
  readonly design: Locator;
  readonly jobId: string;
  readonly revisionId: string;
}

/** A draft, of a large yard if nothing else is said, open at the estimator's desk. */
export async function openYard(browser: Browser, title: string, document = bigYard()): Promise<OpenDraft> {
  const person = await signIn(browser, 'estimator');
  const jobId = await jobFor(person, title);
  const { status, body } = await api<Revision>(person, 'POST', `/jobs/${jobId}/designs`, { name: 'Yard', document, fromRevisionId: null });
  expect(status).toBe(201);
  await person.page.goto(`/jobs/${jobId}`);
  const design = await part(person.page, 'Design');
  await expect(design.getByText('Saved in the office')).toBeVisible();
  return { person, design, jobId, revisionId: body.id };
}

/** Frames of the page while the invert of the basin is dragged up and down [ms each], sixty moves a second. */
export async function dragBasinInvert(page: Page, design: Locator, seconds: number): Promise<number[]> {
  const handle = design.getByRole('slider', { name: /Pump basin.*Inlet invert/ });
  await handle.scrollIntoViewIfNeeded();
  const box = await handle.boundingBox();
  if (box === null) throw new Error('the invert of the basin is not on the drawing');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.evaluate(() => {
    const frames: number[] = [];
    let last = performance.now();
    const note = (now: number) => {
      frames.push(now - last);
      last = now;
      requestAnimationFrame(note);
    };
    requestAnimationFrame(note);
    Object.assign(window, { frames });
  });
  for (let begun = Date.now(), at = 0; at < seconds * 1000; at = Date.now() - begun) {
    await page.mouse.move(x, y - 12 * Math.sin(at / 400));
    await page.waitForTimeout(16);
  }
  const frames = await page.evaluate(() => (window as unknown as { readonly frames: number[] }).frames);
  await page.mouse.move(x, y - 6);
  await page.mouse.up();
  return frames;
}
