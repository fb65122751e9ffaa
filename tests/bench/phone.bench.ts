import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, type BrowserContext, type Page } from '@playwright/test';
import type { Job } from '@yardfall/contracts';
import { report } from '../../packages/calc/bench/measure.ts';
import { pause } from '../../tools/child.mjs';
import { CHROMIUM_ARGS, findChromium } from '../../tools/chromium.mjs';
import { jpeg } from '../e2e/support/crew.ts';
import { readyForTheYard } from '../e2e/support/ready.ts';
import { phone } from '../e2e/support/people.ts';
import { signInOf } from '../support/demo.ts';
import { startService } from '../support/processes.ts';

/**
 * A mid phone is taken as a quarter of this machine's speed on a slow mobile line: 1.6 Mbit/s down, 750 kbit/s up, 150 ms there and back.
 * The line is the "slow 4G" that page measurements commonly use, from memory. A busy machine is a slower phone: the load is printed with the figures,
 * and so is what the thread of the page worked itself, which a busy machine draws out less.
 */
const slower = 4;
const line = { offline: false, latency: 150, downloadThroughput: 1_600_000 / 8, uploadThroughput: 750_000 / 8 };
const rounds = Number(process.env.BENCH_ROUNDS ?? 5);

/** Where the crew can begin: the next step as a control, painted, and the thread free to answer a thumb. */
const noteUsable = `{
  const look = () => {
    if (document.querySelector('.next-item button:enabled') === null) return requestAnimationFrame(look);
    setTimeout(() => { globalThis.usableAt = performance.now(); });
  };
  requestAnimationFrame(look);
}`;

interface OnPhone {
  readonly page: Page;
  /** When the crew could begin [ms after the opening]. Asked for without the test library's own script in the page, which is as long as a part of it. */
  readonly usable: () => Promise<number>;
  /** What the thread of the page has worked so far [ms]; the browser lets it spin to be slower, so that this is as long as on the phone. */
  readonly worked: () => Promise<number>;
}

async function asPhone(context: BrowserContext, withLine: boolean): Promise<OnPhone> {
  const page = await context.newPage();
  const wire = await context.newCDPSession(page);
  await wire.send('Performance.enable', { timeDomain: 'threadTicks' });
  await wire.send('Emulation.setCPUThrottlingRate', { rate: slower });
  if (withLine) {
    await wire.send('Network.enable');
    await wire.send('Network.emulateNetworkConditions', line);
  }
  const worked = async () => ((await wire.send('Performance.getMetrics')).metrics.find(({ name }) => name === 'TaskDuration')?.value ?? NaN) * 1000;
  const usable = async (until = Date.now() + 60_000): Promise<number> => {
    const { result } = await wire.send('Runtime.evaluate', { expression: 'globalThis.usableAt' });
    if (typeof result.value === 'number') return result.value;
    if (Date.now() > until) throw new Error('the home did not become usable within a minute');
    await pause(200);
    return usable(until);
  };
  return { page, usable, worked };
}

function tell(name: string, { seen, worked }: Times, goal: number): void {
  const sorted = [...seen].sort((a, b) => a - b);
  report(`${name}: median of ${String(sorted.length)}`, middle(seen), 'ms', goal);
  report(`${name}: best`, sorted[0] ?? NaN, 'ms');
  report(`${name}: work of its thread, as long as on the phone`, middle(worked), 'ms');
}

const middle = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? NaN;

const service = process.env.BENCH_URL === undefined ? await startService() : null;
const url = process.env.BENCH_URL ?? service?.url ?? '';
const dataDir = process.env.E2E_DATA_DIR ?? service?.dataDir ?? '';
const executablePath = findChromium();
const launch = { ...(executablePath === undefined ? {} : { executablePath }), args: CHROMIUM_ARGS };

async function signIn(context: BrowserContext): Promise<void> {
  const { email, password } = signInOf(dataDir, 'crew');
  const answer = await context.request.post(`${url}/api/v1/session`, { data: { email, password } });
  if (!answer.ok()) throw new Error(`the crew cannot sign in: ${await answer.text()}`);
}

interface Times {
  readonly seen: number[];
  readonly worked: number[];
}
const noTimes = (): Times => ({ seen: [], worked: [] });

async function cold(): Promise<Times> {
  const browser = await chromium.launch(launch);
  const times = noTimes();
  for (let round = 0; round < rounds; round += 1) {
    const context = await browser.newContext({ viewport: phone });
    await signIn(context);
    await context.addInitScript(noteUsable);
    const { page, usable, worked } = await asPhone(context, true);
    await page.goto(`${url}/`, { waitUntil: 'commit' });
    times.seen.push(await usable());
    times.worked.push(await worked());
    await context.close();
  }
  await browser.close();
  return times;
}

/** The app opened from the phone alone, and steps ticked in it. */
async function installed(): Promise<{ readonly opened: Times; readonly ticked: Times }> {
  const folder = mkdtempSync(path.join(tmpdir(), 'yardfall-phone-'));
  const context = await chromium.launchPersistentContext(folder, { ...launch, viewport: phone });
  await signIn(context);
  const first = await context.newPage();
  await first.goto(`${url}/`);
  const { items } = (await (await context.request.get(`${url}/api/v1/jobs?open=true&limit=100`)).json()) as { items: Job[] };
  const job = items.find(({ title, buildRevisionId }) => title === 'Wicker Road' && buildRevisionId !== null);
  if (job === undefined) throw new Error('the crew has no job');
  await readyForTheYard(first, job.id);
  await first.close();
  await context.setOffline(true);
  await context.addInitScript(noteUsable);
  const opened = noTimes();
  for (let round = 0; round < rounds; round += 1) {
    const { page, usable, worked } = await asPhone(context, false);
    await page.goto(`${url}/`, { waitUntil: 'commit' });
    opened.seen.push(await usable());
    opened.worked.push(await worked());
    await page.close();
  }
  const phoneInHand = await asPhone(context, false);
  await phoneInHand.page.goto(`${url}/jobs/${job.id}`);
  const ticked = await tickAll(phoneInHand);
  await context.close();
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  return { opened, ticked };
}

/** From the touch until the page answers it, as painted: that it is being kept, or is. */
async function tickAll({ page, worked }: OnPhone): Promise<Times> {
  const times = noTimes();
  const pictures = await Promise.all([1, 2].map(async (n) => ({ name: `${String(n)}.jpg`, mimeType: 'image/jpeg', buffer: await jpeg() })));
  await page.locator('.next-item').getByRole('button', { name: /^Next/ }).click();
  for (let step = 0; step < 20 && times.seen.length < 8; step += 1) {
    const screen = page.getByRole('dialog').locator('.item-screen');
    const key = (await screen.getAttribute('data-item')) ?? '';
    const tick = screen.locator(':scope > .finish button.button-main');
    const camera = screen.locator(':scope > .photo-evidence input[type=file]:not([accept="video/*"])').last();
    if (await camera.isVisible()) await camera.setInputFiles(pictures);
    const isReady = await page.waitForFunction(() => document.querySelector('.item-screen > .finish button.button-main:enabled') !== null, undefined, { timeout: 5000 }).then(() => true, () => false);
    if (isReady) {
      const before = await worked();
      times.seen.push(await timeOfTick(page, tick));
      times.worked.push((await worked()) - before);
    }
    await screen.locator(':scope > button[data-next]').click();
    await page.waitForFunction((before) => document.querySelector('.item-screen')?.getAttribute('data-item') !== before, key);
  }
  return times;
}

async function timeOfTick(page: Page, tick: ReturnType<Page['locator']>): Promise<number> {
  const acknowledged = page.evaluate(() => new Promise<number>((resolve) => {
    addEventListener('pointerup', ({ timeStamp }) => {
      const look = () => {
        const done = document.querySelector('.item-screen > .finish button.button-main:not([aria-busy])') === null;
        if (!done) return requestAnimationFrame(look);
        // What stands before the callbacks of a frame is painted at its end.
        setTimeout(() => resolve(performance.now() - timeStamp));
        return undefined;
      };
      look();
    }, { once: true, capture: true });
  }));
  await tick.click();
  return acknowledged;
}

try {
  tell('crew home usable, cold, mid phone on 1.6 Mbit/s', await cold(), 2_500);
  const { opened, ticked } = await installed();
  tell('crew home usable, installed, no signal', opened, 1_000);
  tell('tick acknowledged, no signal', ticked, 100);
  report('load of the machine over one minute', loadavg()[0] ?? 0, '-');
} finally {
  await service?.remove();
}
