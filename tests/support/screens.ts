import { mkdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import { chromium, type Browser, type BrowserContext, type Page } from '@playwright/test';
import { CHROMIUM_ARGS, findChromium, NO_CHROMIUM } from '../../tools/chromium.mjs';
import { Complaint, run } from '../../tools/complaint.mjs';
import { inRoot } from '../../tools/paths.mjs';
import { createSteps } from '../../tools/steps.mjs';
import { pages, type ScreenPage } from '../e2e/pages.ts';
import { signInOf, type SignIn } from './demo.ts';
import { startService } from './processes.ts';

const sizes = [{ width: 390, height: 844 }, { width: 1440, height: 900 }] as const;
const languages = ['en', 'es'] as const;
const themes = ['light', 'dark'] as const;
const folder = inRoot('.yardfall', 'screens');

async function enter(context: BrowserContext, origin: string, signIn: SignIn): Promise<void> {
  if (signIn.link !== undefined) {
    const page = await context.newPage();
    await page.goto(new URL(signIn.link, origin).href);
    await page.waitForURL((url) => url.hash === '', { timeout: 30_000 }); // the token leaves the address when the page is open
    await page.close();
    return;
  }
  const answer = await context.request.post('/api/v1/session', { data: { email: signIn.email, password: signIn.password } });
  if (!answer.ok()) throw new Error(`sign-in as ${signIn.role} was answered ${answer.status()}: ${await answer.text()}`);
}

/** Ids of the demo jobs by title, as far as this person sees them. */
async function jobIds(context: BrowserContext): Promise<Map<string, string>> {
  const answer = await context.request.get('/api/v1/jobs');
  if (!answer.ok()) return new Map(); // customers list no jobs, and their pages name none
  const { items } = (await answer.json()) as { items: { id: string; title: string }[] };
  return new Map(items.map(({ title, id }) => [title, id]));
}

function addressOf({ path: template }: ScreenPage, ids: ReadonlyMap<string, string>): string {
  return template.replaceAll(/\{([^}]+)\}/g, (_, name: string) => {
    const found = [...ids].find(([title]) => title.includes(name));
    if (found === undefined) throw new Error(`no demo job is named ${name}; there are ${[...ids.keys()].join(', ')}`);
    return found[1];
  });
}

/** Pages load their parts as they need them; a picture before that shows a placeholder. */
async function settle(page: Page): Promise<void> {
  const rest = async () => {
    await page.waitForLoadState('networkidle');
    await page.waitForFunction(() => document.querySelector('main') !== null && document.querySelector('[data-waiting]') === null, undefined, { timeout: 60_000 });
  };
  await rest();
  // Pictures below the fold are fetched as they come into view.
  await page.evaluate(async () => {
    for (let y = 0; y < document.documentElement.scrollHeight; y += 600) {
      scrollTo(0, y);
      await new Promise((done) => { setTimeout(done, 40); });
    }
    scrollTo(0, 0);
  });
  await rest();
  await page.evaluate(() => document.fonts.ready);
  await page.waitForTimeout(250);
}

interface Look {
  readonly width: number;
  readonly theme: (typeof themes)[number];
  readonly language: (typeof languages)[number];
}

/** One picture, and what the page complained about while it was taken. */
async function take(context: BrowserContext, wanted: ScreenPage, address: string, { width, theme, language }: Look): Promise<string[]> {
  const name = `${wanted.role}-${wanted.name}-${width}-${theme}-${language}`;
  const problems: string[] = [];
  const page = await context.newPage();
  page.on('console', (message) => { if (message.type() === 'error') problems.push(`${name}: ${message.text()}`); });
  page.on('pageerror', (error) => problems.push(`${name}: ${error.message}`));
  await page.emulateMedia({ colorScheme: theme });
  await page.goto(address);
  await settle(page);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  if (wide > width) problems.push(`${name}: the page is ${wide} px wide`);
  await page.screenshot({ path: path.join(folder, `${name}.png`), fullPage: true });
  await page.close();
  return problems;
}

async function prefer(context: BrowserContext, role: string, choice: { language: string; theme: string }): Promise<void> {
  const answer = await context.request.patch('/api/v1/session/preferences', { data: choice, headers: { 'idempotency-key': crypto.randomUUID() } });
  if (!answer.ok()) throw new Error(`preferences of ${role} were answered ${answer.status()}: ${await answer.text()}`);
}

async function takeRole(browser: Browser, origin: string, role: ScreenPage['role'], signIn: SignIn): Promise<string[]> {
  const problems: string[] = [];
  for (const size of sizes) {
    const context = await browser.newContext({ baseURL: origin, viewport: size, reducedMotion: 'reduce' });
    await enter(context, origin, signIn);
    const ids = await jobIds(context);
    for (const [language, theme] of languages.flatMap((l) => themes.map((t) => [l, t] as const))) {
      await prefer(context, role, { language, theme });
      for (const wanted of wantedPages.filter((page) => page.role === role)) {
        problems.push(...(await take(context, wanted, addressOf(wanted, ids), { width: size.width, theme, language })));
      }
    }
    await context.close();
  }
  return problems;
}

/** Only pages whose role and name hold one of the words given at the command line, when there are any. */
const words = process.argv.slice(2);
const wantedPages = pages.filter(({ role, name }) => words.length === 0 || words.some((word) => `${role}-${name}`.includes(word)));

await run(async () => {
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Complaint(`The screens cannot be taken: ${NO_CHROMIUM}.`);
  const steps = createSteps();
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const service = await steps.step('Starting a service with a fresh demo company', () => startService());
  const browser = await chromium.launch({ executablePath, args: CHROMIUM_ARGS });
  const problems: string[] = [];
  try {
    for (const role of new Set(wantedPages.map((page) => page.role))) {
      problems.push(...(await steps.step(`Taking the screens of the ${role}`, () => takeRole(browser, service.url, role, signInOf(service.dataDir, role)))));
    }
  } finally {
    await browser.close();
    await service.remove();
  }
  for (const problem of problems) steps.say(problem);
  steps.say(`${wantedPages.length * sizes.length * languages.length * themes.length} screens in ${folder}, ${problems.length} problems (${steps.total()})`);
  return problems.length > 0 ? 1 : 0;
});
