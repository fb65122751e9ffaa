import { createHash, randomBytes } from 'node:crypto';
import { expect, test, type Browser } from '@playwright/test';
import type { AsBuilt, Checklist, FoundReport, Photo } from '@yardfall/contracts';
import { heavyPicture } from '../support/media.ts';
import { BadLink, type Fault } from './support/badLink.ts';
import { dialogOf, screenOf, workStep, type Day } from './support/crewDay.ts';
import { jpeg, ListWorker } from './support/crew.ts';
import { Hand, type Picture } from './support/hand.ts';
import { part } from './support/office.ts';
import { api } from './support/people.ts';
import { Pocket } from './support/pocket.ts';
import { readyForTheYard } from './support/ready.ts';
import { member, readyJob } from './support/readyJob.ts';

/** E2E_DAY=whole for every step of the day and thirty heavy photos; else one of each kind of evidence, every hold point that a phone opens alone, and six. */
const whole = process.env.E2E_DAY === 'whole';
const heavyPhotos = whole ? 30 : 6;
const some = ['A2', 'A3', 'A5', 'A6', 'B2', 'B5', 'C1', 'C3', 'C5', 'D2', 'D4', 'E1', 'E5', 'F2', 'F7', 'H1', 'I2', 'I3', 'J4'];
/** The office's own steps, and what follows the pump-down, which is recorded in the office. */
const notToday = ['A1', 'A4', 'B6', 'J1', 'J8', 'J9'];
/** When the work of each group begins; the grate that was taped at nine is too old for the pour at half past two. */
const hours: Readonly<Record<string, number>> = { A: 6.5, B: 7, C: 8, D: 9, E: 10, F: 11.5, G: 12.5, H: 13.5, I: 14.5, J: 16 };
const closing = 17.5;
/** One write in four goes wrong. */
const faults: readonly Fault[] = ['none', 'dropBefore', 'none', 'none', 'again', 'none', 'dropAfter', 'none', 'none', 'none', 'badGateway', 'twice', 'none', 'late', 'none', 'none'];

const sha256 = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

/** JPEG photos of noise, no two alike: the heavy ones of 3 to 5 MB are few pictures, each with a comment of its own (marker FFFE, ITU-T T.81). */
class Camera {
  readonly kept: { readonly sha256: string; readonly key: string | null }[] = [];
  private taken = 0;
  private readonly heavy: readonly Buffer[];

  private constructor(heavy: readonly Buffer[]) {
    this.heavy = heavy;
  }

  static async withFilm(): Promise<Camera> {
    const heavy = await Promise.all([[2600, 1850], [2800, 2000], [3000, 2150]].map(([width = 0, height = 0]) => heavyPicture(width, height)));
    for (const { length } of heavy) expect(length > 3_000_000 && length < 5_000_000, String(length)).toBe(true);
    return new Camera([...heavy, await jpeg()]);
  }

  shoot(): Picture {
    const picture = this.heavy[this.taken < heavyPhotos ? this.taken % 3 : 3] ?? Buffer.alloc(0);
    this.taken += 1;
    const comment = Buffer.concat([Buffer.from([0xff, 0xfe, 0x00, 0x12]), randomBytes(16)]);
    return { name: `IMG_${String(this.taken)}.jpg`, mimeType: 'image/jpeg', buffer: Buffer.concat([picture.subarray(0, 2), comment, picture.subarray(2)]) };
  }
}

const beside = (hour: number): number => (hour - closing) * 3_600_000;

test('a full day without a signal, the phone killed three times, and over a bad link everything arrives exactly once', async ({ browser, baseURL }) => {
  test.setTimeout(whole ? 1_500_000 : 420_000);
  const jobId = await readyJob(browser, `Full day ${String(Date.now() % 100_000)}`);
  const { items, before, interrupted, camera, pocket, link, worked } = await theDay(browser, baseURL ?? '', jobId);

  await test.step('back in reach, over a bad link', async () => {
    link.turnDead(false);
    link.turnBad(true, faults);
    await pocket.setClock(0);
    await pocket.setOffline(false);
    await pocket.goTo(`${link.url}/waits`);
    await expect(pocket.page.getByText('Nothing waits')).toBeVisible({ timeout: whole ? 900_000 : 240_000 });
    for (const fault of ['dropBefore', 'badGateway', 'dropAfter', 'again', 'twice'] as const) expect(link.happened.get(fault) ?? 0, fault).toBeGreaterThan(0);
    link.turnBad(false);
    expect(pocket.complaints).toEqual([]);
    await pocket.throwAway();
    await link.close();
  });

  const crew = await member(browser, 'crew');
  const read = async <T>(path: string) => (await api<T>(crew, 'GET', `/jobs/${jobId}/${path}`)).body;
  await test.step('every photo is there once, byte for byte', async () => {
    const photos = (await read<{ items: Photo[] }>('photos')).items.filter(({ id }) => !before.includes(id));
    const wanted = camera.kept.map((one) => one.sha256);
    expect(photos.map((photo) => photo.sha256).filter((hash) => hash !== interrupted).sort()).toEqual([...wanted].sort());
    expect(photos.filter((photo) => photo.sha256 === interrupted).length).toBeLessThan(2);
    for (const photo of photos) {
      const original = await crew.context.request.get(`/api/v1/jobs/${jobId}/photos/${photo.id}/original`);
      expect(sha256(await original.body())).toBe(photo.sha256);
    }
  });
  await test.step('every step is proven by facts that came once and count', async () => {
    const list = await read<Checklist>('checklist');
    const photos = (await read<{ items: Photo[] }>('photos')).items;
    const byKey = new Map(list.items.map((item) => [item.key, item]));
    expect(worked.map((key) => [key, byKey.get(key)?.state])).toEqual(worked.map((key) => [key, 'proven']));
    const facts = list.items.flatMap((item) => item.facts);
    expect(new Set(facts.map(({ fact }) => fact.id)).size).toBe(facts.length);
    expect(facts.filter(({ verdict, reason }) => verdict !== 'kept' || reason !== null)).toEqual([]);
    for (const { sha256: hash, key } of camera.kept.filter((one) => one.key !== null)) {
      const { id } = photos.find((photo) => photo.sha256 === hash) ?? { id: '' };
      expect(byKey.get(key ?? '')?.facts.filter(({ fact }) => fact.kind === 'photo' && fact.photoId === id), `${key ?? ''} shows its photo once`).toHaveLength(1);
    }
    const measured = worked.flatMap((key) => (items.get(key)?.template === 'E1' ? [] : (items.get(key)?.requirement.measures ?? []).filter(({ when }) => when === undefined).map(({ name }) => `${key} ${name}`)));
    expect(facts.flatMap(({ fact }) => (fact.kind === 'measured' ? [`${fact.itemKey} ${fact.name}`] : [])).sort()).toEqual(measured.sort());
  });
  await test.step('the shots of the pipe and the finding are there, once each', async () => {
    expect((await read<AsBuilt>('as-built')).pipes.map(({ part: id }) => id)).toEqual(['P1']);
    const found = (await read<{ items: FoundReport[] }>('found')).items;
    expect(found.map(({ kind, photoIds }) => [kind, photoIds.length])).toEqual([['pipeInTheWay', 1]]);
  });
  await crew.context.close();
});

/** From before opening to closing, nothing passes between phone and office. */
async function theDay(browser: Browser, office: string, jobId: string) {
  const owner = await member(browser, 'owner');
  const desk = await ListWorker.of(owner, jobId);
  desk.beside = beside(-6); // the evening before, as the phone's clock will have it
  await desk.prove(({ template }) => ['A1', 'A4', 'B6'].includes(template));
  const items = new Map((await api<Checklist>(owner, 'GET', `/jobs/${jobId}/checklist`)).body.items.map((item) => [item.key, item]));
  const before = (await api<{ items: Photo[] }>(owner, 'GET', `/jobs/${jobId}/photos`)).body.items.map(({ id }) => id);
  await owner.context.close();
  const link = await BadLink.to(office);
  const pocket = new Pocket();
  const camera = await Camera.withFilm();
  const jobPage = `${link.url}/jobs/${jobId}`;
  await pocket.switchOn();
  await pocket.signIn(link.url);
  await pocket.goTo(jobPage);
  await readyForTheYard(pocket.page, jobId);
  const hand = new Hand(pocket.page);
  const day: Day = { hand, items, picture: () => camera.shoot(), kept: ({ buffer }, { key }) => camera.kept.push({ sha256: sha256(buffer), key }) };
  let interrupted = '';

  const comeBack = async () => {
    await pocket.goTo(jobPage);
    hand.page = pocket.page;
    await part(pocket.page, 'Work');
  };
  const noSignal = async () => {
    link.turnDead(true);
    await pocket.setOffline(true);
  };
  await noSignal();
  const wanted = [...items.values()].filter(({ template }) => !notToday.includes(template) && (whole || some.includes(template)));
  expect(wanted.length).toBeGreaterThanOrEqual(whole ? 45 : 15);
  const worked: string[] = [];
  for (const group of new Set(wanted.map((item) => item.group))) {
    await test.step(`group ${group}`, async () => {
      await pocket.setClock(beside(hours[group] ?? closing));
      if (group === 'A') await comeBack();
      if (group === 'D') { // the page is closed
        await pocket.closePage();
        await comeBack();
      }
      if (group === 'E') interrupted = await crashWhileKeeping(day, pocket, camera, comeBack);
      if (group === 'F') await stopWork(hand, camera);
      if (group === 'I') { // the battery falls out
        await pocket.loseBattery();
        await pocket.switchOn();
        await noSignal();
        await comeBack();
      }
      for (const { key, template } of wanted.filter((item) => item.group === group && !worked.includes(item.key))) {
        await openStep(hand, key);
        if (template === 'I3') await tapeAgain(day);
        worked.push(...(await workStep(day)));
        await close(hand);
      }
    });
  }
  await pocket.setClock(0);
  return { items, before, interrupted, camera, pocket, link, worked: [...new Set(worked)] };
}

async function openStep({ page }: Hand, key: string): Promise<void> {
  await page.locator(`.item-row[data-item="${key}"]`).click();
  await expect(screenOf(page)).toHaveAttribute('data-item', key);
}

async function close({ page }: Hand): Promise<void> {
  await dialogOf(page).getByRole('button', { name: 'Close', exact: true }).click();
  await expect(dialogOf(page)).toBeHidden();
}

/** The pour is held, because the photos of the taped grate are more than two hours old: the grate is opened from there and shown again. */
async function tapeAgain(day: Day): Promise<void> {
  const { page } = day.hand;
  await expect(screenOf(page).getByText('First this has to be proven')).toBeVisible();
  await expect(screenOf(page).getByRole('button', { name: 'Start the pour' })).toBeDisabled();
  await screenOf(page).locator('.held-item').getByRole('button', { name: /^Grate/ }).click();
  const grate = day.items.get('D4:CH1');
  if (grate === undefined) throw new Error('nothing is taped');
  for (const times of [3, 4]) {
    const picture = day.picture(grate);
    await screenOf(page).locator('input[type=file]').first().setInputFiles(picture);
    await expect(screenOf(page).getByText(`Photos: ${String(times)} of 2`)).toBeVisible();
    day.kept(picture, grate);
  }
  // The tick says that nothing was lifted since these photos.
  await screenOf(page).locator(':scope > .finish').getByRole('button', { name: 'Done', exact: true }).click();
  await expect(screenOf(page).getByText('Done and on record').first()).toBeVisible();
  await close(day.hand);
  await openStep(day.hand, 'I3:CH1');
}

/** The page dies between the shutter and the moment at which the photo is on the disk. What the phone then shows is what it has. */
async function crashWhileKeeping(day: Day, pocket: Pocket, camera: Camera, comeBack: () => Promise<void>): Promise<string> {
  await openStep(day.hand, 'A2');
  const picture = camera.shoot();
  await screenOf(pocket.page).locator('input[type=file]').first().setInputFiles(picture);
  await pocket.crashPage();
  await comeBack();
  return sha256(picture.buffer);
}

async function stopWork({ page }: Hand, camera: Camera): Promise<void> {
  await page.getByRole('button', { name: /^Stop work/ }).first().click();
  await dialogOf(page).getByRole('button', { name: 'A pipe in the way' }).click();
  const picture = camera.shoot();
  await dialogOf(page).locator('input[type=file]').first().setInputFiles(picture);
  await expect(dialogOf(page).locator('.photo-strip img')).toHaveCount(1);
  camera.kept.push({ sha256: sha256(picture.buffer), key: null });
  await dialogOf(page).getByRole('button', { name: 'That is all for now' }).click();
  await expect(dialogOf(page)).toBeHidden();
}
