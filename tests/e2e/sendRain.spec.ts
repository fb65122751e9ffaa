import { createHash } from 'node:crypto';
import { expect, test } from '@playwright/test';
import type { Photo } from '@yardfall/contracts';
import { heavyPicture, video } from '../support/media.ts';
import { faultsOf } from './support/axe.ts';
import { BadLink } from './support/badLink.ts';
import { api, openBrowser, phone, signIn } from './support/people.ts';

const sha256 = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');

test('a customer sends photos and a video of the rain over a bad link, closes the page, and goes on', async ({ browser, baseURL }) => {
  test.setTimeout(300_000);
  const office = await signIn(browser, 'estimator');
  const { body: jobs } = await api<{ items: { id: string }[] }>(office, 'GET', '/jobs?open=true');
  const jobId = jobs.items[0]?.id ?? '';
  const { body: minted } = await api<{ link: string }>(office, 'POST', `/jobs/${jobId}/sending-link`, {});
  const before = (await api<{ items: Photo[] }>(office, 'GET', `/jobs/${jobId}/photos`)).body.items.map(({ id }) => id);

  const link = await BadLink.to(baseURL ?? '');
  const customer = await openBrowser(browser, phone);
  const { page } = customer;
  await page.goto(`${link.url}/send#${minted.link.split('#')[1] ?? ''}`);
  await expect(page.getByRole('heading', { level: 1, name: 'Show us the rain' })).toBeVisible();
  expect(page.url()).toBe(`${link.url}/send`);
  expect(await faultsOf(page)).toEqual([]);

  link.turnBad(true);
  const files = [await heavyPicture(1600, 1200), await heavyPicture(900, 700), video('isom', 900_000)];
  await page.getByLabel('When was it, and where is the water?').fill('Sunday evening, at the back door');
  await page.locator('input[type=file]').setInputFiles(files.map((buffer, at) => ({ name: `rain-${String(at)}`, mimeType: at === 2 ? 'video/mp4' : 'image/jpeg', buffer })));
  await expect(page.getByRole('progressbar').first()).toBeVisible();
  await page.locator('input[type=file]').setInputFiles([{ name: 'bill.pdf', mimeType: 'application/pdf', buffer: Buffer.from('%PDF-1.7') }]);
  await expect(page.getByText('bill.pdf is not a photo or video')).toBeVisible();
  await page.close();

  const again = await customer.context.newPage();
  await again.goto(`${link.url}/send`);
  await expect(again.getByRole('heading', { name: '3 files have arrived' })).toBeVisible({ timeout: 200_000 });
  await expect(again.getByRole('progressbar')).toHaveCount(0);
  expect([...link.happened.keys()]).toEqual(expect.arrayContaining(['dropBefore', 'badGateway', 'dropAfter']));
  link.turnBad(false);

  const { body } = await api<{ items: Photo[] }>(office, 'GET', `/jobs/${jobId}/photos`);
  const sent = body.items.filter(({ id }) => !before.includes(id));
  expect(sent.map((photo) => photo.sha256).sort()).toEqual(files.map(sha256).sort());
  expect(sent.every(({ fromCustomer, note }) => fromCustomer && note === 'Sunday evening, at the back door')).toBe(true);
  for (const photo of sent) {
    const original = await office.context.request.get(`/api/v1/jobs/${jobId}/photos/${photo.id}/original`);
    expect(sha256(await original.body())).toBe(photo.sha256);
  }
  await customer.context.close();
  await office.context.close();
  await link.close();
});
