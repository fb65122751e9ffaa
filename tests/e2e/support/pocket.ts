import { mkdtempSync, readlinkSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, expect, type BrowserContext, type Page } from '@playwright/test';
import { CHROMIUM_ARGS, findChromium } from '../../../tools/chromium.mjs';
import { signInOf } from '../../support/demo.ts';
import { phone } from './people.ts';

/** Sets the clock of the pages that the phone opens, and of the one that is open, so many milliseconds beside the machine's. */
function clockScript(beside: number): string {
  return `globalThis.besideMachine = ${String(beside)};
if (!globalThis.machineDate) {
  const Real = globalThis.machineDate = Date;
  globalThis.Date = class extends Real {
    constructor(...given) { if (given.length === 0) super(Real.now() + globalThis.besideMachine); else super(...given); }
    static now() { return Real.now() + globalThis.besideMachine; }
  };
}`;
}

/** A phone whose storage is on a disk: its pages and its whole browser can be killed, and it comes up again with what it had kept. */
export class Pocket {
  readonly complaints: string[] = [];
  private readonly folder = mkdtempSync(path.join(tmpdir(), 'yardfall-pocket-'));
  private context: BrowserContext | null = null;
  private open: Page | null = null;
  private beside = 0;

  get page(): Page {
    if (this.open === null) throw new Error('the phone is off');
    return this.open;
  }

  async switchOn(): Promise<void> {
    const executablePath = findChromium();
    this.context = await chromium.launchPersistentContext(this.folder, { ...(executablePath === undefined ? {} : { executablePath }), args: CHROMIUM_ARGS, viewport: phone, locale: 'en-US' });
    await this.context.addInitScript(clockScript(this.beside));
    this.context.setDefaultTimeout(30_000);
  }

  async signIn(url: string): Promise<void> {
    const { email, password } = signInOf(process.env.E2E_DATA_DIR ?? '', 'crew');
    await this.goTo(`${url}/sign-in`);
    await this.page.getByLabel('E-mail').fill(email ?? '');
    await this.page.getByLabel('Password').fill(password ?? '');
    await this.page.getByRole('button', { name: 'Sign in' }).click();
    await expect(this.page.getByRole('heading', { level: 1 })).not.toHaveText('Sign in');
  }

  async goTo(url: string): Promise<void> {
    this.open ??= await this.newPage();
    await this.open.goto(url);
  }

  /** What the browser keeps besides the app's own store. */
  async emptyCache(): Promise<void> {
    const wire = await this.page.context().newCDPSession(this.page);
    await wire.send('Network.clearBrowserCache');
  }

  async setOffline(offline: boolean): Promise<void> {
    await this.context?.setOffline(offline);
  }

  /** The clock of the phone, so many milliseconds beside the machine's. */
  async setClock(beside: number): Promise<void> {
    this.beside = beside;
    await this.context?.addInitScript(clockScript(beside));
    await this.open?.evaluate(clockScript(beside));
  }

  /** The page goes without a word, in the middle of what it does. */
  async crashPage(): Promise<void> {
    const page = this.page;
    const gone = page.waitForEvent('crash');
    const wire = await page.context().newCDPSession(page);
    wire.send('Page.crash').catch(() => undefined); // nobody is left to answer
    await gone;
    await page.close();
    this.open = null;
  }

  async closePage(): Promise<void> {
    await this.page.close({ runBeforeUnload: false });
    this.open = null;
  }

  /** The battery falls out: kill -9 of the whole browser. */
  async loseBattery(): Promise<void> {
    const context = this.context;
    const pid = Number(readlinkSync(path.join(this.folder, 'SingletonLock')).split('-').at(-1));
    const gone = new Promise((resolve) => context?.once('close', resolve));
    process.kill(pid, 'SIGKILL');
    await gone;
    [this.context, this.open] = [null, null];
  }

  async throwAway(): Promise<void> {
    await this.context?.close();
    rmSync(this.folder, { recursive: true, force: true, maxRetries: 5 });
  }

  private async newPage(): Promise<Page> {
    if (this.context === null) throw new Error('the phone is off');
    const page = this.context.pages()[0] ?? (await this.context.newPage());
    page.on('pageerror', (error) => this.complaints.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error' && !message.text().includes('Failed to load resource')) this.complaints.push(message.text());
    });
    return page;
  }
}
