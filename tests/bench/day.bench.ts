import { chromium, type Page } from '@playwright/test';
import type { Checklist, Job, Revision } from '@yardfall/contracts';
import { report } from '../../packages/calc/bench/measure.ts';
import { CHROMIUM_ARGS, findChromium } from '../../tools/chromium.mjs';
import { dialogOf, screenOf, stepOnScreen, workStep, type Day } from '../e2e/support/crewDay.ts';
import { jpeg, ListWorker } from '../e2e/support/crew.ts';
import { Hand, noEffort, type Effort } from '../e2e/support/hand.ts';
import { part } from '../e2e/support/office.ts';
import { api, type Person } from '../e2e/support/people.ts';
import { member, readyJob } from '../e2e/support/readyJob.ts';
import { startService } from '../support/processes.ts';

/**
 * Seconds of the keystroke-level model (Card, Moran and Newell, The Psychology of Human-Computer Interaction, 1983, chapter 8), from memory:
 * P points 1.1, B presses 0.1, M thinks 1.35, D draws n lines of l cm together 0.9 n + 0.16 l. The model knows no touch: a tap and a flick are taken as P + B,
 * which is slow for a bare finger and fair for a glove. K is one character on a phone: 36.2 words a minute of five characters among 37,000 people
 * (Palin and others, MobileHCI 2019, from memory). The camera's own second to open is ours.
 */
const seconds = { tap: 1.1 + 0.1, think: 1.35, char: 60 / (36.2 * 5), sign: 0.9 * 4 + 0.16 * 12, camera: 1 };
/** Thought: once for each step that opens, each figure that is read off and each picture that is aimed. A photo is shutter and "use it" besides. */
function timeOf({ taps, chars, photos, scrolls, drawn, fields, steps }: Effort): number {
  const photo = seconds.camera + seconds.think + 2 * seconds.tap;
  return (taps + scrolls) * seconds.tap + chars * seconds.char + (fields + steps) * seconds.think + photos * photo + drawn * seconds.sign;
}

const service = process.env.BENCH_URL === undefined ? await startService() : null;
const url = process.env.BENCH_URL ?? service?.url ?? '';
process.env.E2E_DATA_DIR ??= service?.dataDir ?? '';
const executablePath = findChromium();
const browser = await chromium.launch({ ...(executablePath === undefined ? {} : { executablePath }), args: CHROMIUM_ARGS });
const open = browser.newContext.bind(browser);
browser.newContext = (options) => open({ ...options, baseURL: url, locale: 'en-US' });

/** The steps one after the other, as the control for the next one brings them. */
async function walk(day: Day, spent: Map<string, Effort>): Promise<void> {
  const { hand } = day;
  const { page } = hand;
  const done = new Set<string>();
  await hand.tap(page.locator('.next-item').getByRole('button', { name: /^Next/ }));
  for (;;) {
    const key = await stepOnScreen(page);
    if (done.has(key)) break;
    hand.effort.steps += 1;
    // The pump-down is recorded where the proof is.
    const isPumpDown = key.startsWith('J1');
    if (isPumpDown) await pumpDown(day);
    for (const one of await workStep(day)) done.add(one);
    const next = dialogOf(page).locator('.item-screen > button[data-next]');
    const more = (await next.isVisible()) && (await next.textContent())?.startsWith('Next') === true;
    if (more) await hand.tap(next);
    add(spent, key.slice(0, 1), hand);
    if (!more) break;
    await page.waitForFunction((before) => document.querySelector('.item-screen')?.getAttribute('data-item') !== before, key);
  }
}

function add(spent: Map<string, Effort>, group: string, hand: Hand): void {
  const before = spent.get(group) ?? noEffort();
  for (const name of Object.keys(before) as (keyof Effort)[]) before[name] += hand.effort[name];
  spent.set(group, before);
  hand.effort = noEffort();
}

let jobOfDay: { readonly crew: Person; readonly job: Job } | null = null;

async function pumpDown({ hand }: Day): Promise<void> {
  if (jobOfDay === null) return;
  const { crew, job } = jobOfDay;
  const { page } = hand;
  const { document, evaluation } = (await api<Revision>(crew, 'GET', `/jobs/${job.id}/revisions/${job.buildRevisionId ?? ''}`)).body;
  const basin = document.system.parts.find((one) => one.kind === 'basin');
  const predicted = evaluation?.results.pumps[0]?.dutyAtOff.flow ?? NaN;
  if (basin?.kind !== 'basin') throw new Error('the design has no basin');
  await hand.tap(dialogOf(page).getByRole('button', { name: 'Close', exact: true }));
  const proof = await part(page, 'Proof');
  hand.effort.taps += 1;
  await hand.tap(proof.getByRole('button', { name: /pump-down/i }).first());
  const volume = Math.PI * (basin.diameter / 2) ** 2 * 0.254;
  for (const run of [1, 2, 3]) {
    const fields = proof.getByRole('group', { name: `Run ${String(run)}` });
    await hand.type(fields.getByLabel('Upper mark'), `${(basin.onLevel / 0.3048).toFixed(3)}'`);
    await hand.type(fields.getByLabel('Lower mark'), `${((basin.onLevel - 0.254) / 0.3048).toFixed(3)}'`);
    await hand.type(fields.getByLabel('Water between the marks'), (volume / 0.003785411784).toFixed(1));
    await hand.type(fields.getByLabel('Time'), (volume / predicted).toFixed(1));
  }
  await hand.tap(proof.getByRole('button', { name: /^Record/ }));
  await proof.getByText(/Passes:/).waitFor();
  await hand.tap(page.locator('.item-row[data-item^="J1"]'));
  await screenOf(page).waitFor();
}

async function openPage(page: Page, jobId: string): Promise<void> {
  await page.goto(`/jobs/${jobId}`);
  await page.locator('.next-item button').waitFor();
}

try {
  const jobId = process.env.JOB ?? (await readyJob(browser, `Phone time ${String(Date.now() % 100_000)}`));
  const owner = await member(browser, 'owner');
  await (await ListWorker.of(owner, jobId)).prove(({ template }) => ['A1', 'A4', 'B6'].includes(template));
  const crew = await member(browser, 'crew');
  const list = (await api<Checklist>(crew, 'GET', `/jobs/${jobId}/checklist`)).body;
  jobOfDay = { crew, job: (await api<Job>(crew, 'GET', `/jobs/${jobId}`)).body };
  let taken = 0;
  const pictures = await Promise.all(Array.from({ length: 90 }, () => jpeg()));
  const picture = () => ({ name: 'photo.jpg', mimeType: 'image/jpeg', buffer: pictures[taken++] ?? Buffer.alloc(0) });
  await openPage(crew.page, jobId);
  const spent = new Map<string, Effort>();
  await walk({ hand: new Hand(crew.page), items: new Map(list.items.map((item) => [item.key, item])), picture, kept: () => undefined }, spent);
  const all = noEffort();
  for (const [group, effort] of spent) {
    for (const name of Object.keys(all) as (keyof Effort)[]) all[name] += effort[name];
    report(`phone time of Tern Hollow, group ${group}: ${String(effort.steps)} screens, ${String(effort.taps)} taps, ${String(effort.chars)} characters, ${String(effort.photos)} photos, ${String(effort.scrolls)} flicks`, timeOf(effort) / 60, 'min');
  }
  report(`phone time of Tern Hollow, the whole day: ${String(all.steps)} screens, ${String(all.taps)} taps, ${String(all.chars)} characters, ${String(all.photos)} photos, ${String(all.scrolls)} flicks`, timeOf(all) / 60, 'min', 25);
  const left = (await api<Checklist>(crew, 'GET', `/jobs/${jobId}/checklist`)).body.items.filter(({ state }) => state !== 'proven').map(({ key }) => key);
  report(`phone time of Tern Hollow: steps left to the office (${left.join(' ')})`, left.length, '-');
} finally {
  await browser.close();
  await service?.remove();
}
