import { expect, type Locator, type Page } from '@playwright/test';

export interface Picture {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

/** What a thumb did. A scroll is one flick of most of a screen; a drawn signature is one. */
export interface Effort {
  taps: number;
  chars: number;
  photos: number;
  scrolls: number;
  drawn: number;
  /** Fields typed into, and steps opened: what is thought about. */
  fields: number;
  steps: number;
}

export const noEffort = (): Effort => ({ taps: 0, chars: 0, photos: 0, scrolls: 0, drawn: 0, fields: 0, steps: 0 });

/** Share of the screen that one flick brings on. */
const flick = 0.7;

/** A crew lead's thumb on the page: it presses what is asked, and counts what that takes. */
export class Hand {
  page: Page;
  effort = noEffort();

  constructor(page: Page) {
    this.page = page;
  }

  async tap(target: Locator): Promise<void> {
    await this.reach(target);
    this.effort.taps += 1;
    await target.click();
  }

  async type(target: Locator, text: string): Promise<void> {
    await this.reach(target);
    this.effort.taps += 1;
    this.effort.chars += text.length;
    this.effort.fields += 1;
    await target.fill(text);
  }

  /** The camera opens by one tap on the control that carries the input; taking and accepting the picture belong to the photo. */
  async photograph(input: Locator, picture: Picture): Promise<void> {
    await this.reach(input.locator('..'));
    this.effort.taps += 1;
    this.effort.photos += 1;
    await input.setInputFiles(picture);
  }

  async sign(pad: Locator): Promise<void> {
    await this.reach(pad);
    this.effort.drawn += 1;
    const box = await pad.boundingBox();
    if (box === null) throw new Error('there is nowhere to sign');
    await this.page.mouse.move(box.x + box.width * 0.2, box.y + box.height * 0.6);
    await this.page.mouse.down();
    for (const [x, y] of [[0.35, 0.3], [0.5, 0.7], [0.7, 0.35]] as const) await this.page.mouse.move(box.x + box.width * x, box.y + box.height * y);
    await this.page.mouse.up();
  }

  /** Brings it on screen, and counts the flicks that this takes. */
  private async reach(target: Locator): Promise<void> {
    await expect(target).toBeVisible();
    const away = await target.evaluate((node) => {
      const { top, bottom } = node.getBoundingClientRect();
      return Math.max(0, bottom - innerHeight, -top);
    });
    if (away <= 0) return;
    const height = this.page.viewportSize()?.height ?? 844;
    this.effort.scrolls += Math.ceil(away / (flick * height));
    await target.scrollIntoViewIfNeeded();
  }
}
