import path from 'node:path';
import { expect, type Locator, type Page } from '@playwright/test';
import type { Job } from '@yardfall/contracts';
import { inRoot } from '../../../tools/paths.mjs';
import { api, type Person } from './people.ts';

/** The part of the record under one heading of the job page, opened when it is closed. */
export async function part(page: Page, heading: string): Promise<Locator> {
  const region = page.getByRole('region', { name: heading, exact: true });
  const fold = region.getByRole('button', { name: heading, exact: true, expanded: false });
  await expect(region).toBeVisible();
  if (await fold.isVisible()) await fold.click();
  return region;
}

/** A job to work at, without the forms in which a call is taken. */
export async function jobFor(person: Person, title: string): Promise<string> {
  const { status, body } = await api<Job>(person, 'POST', '/jobs', {
    title, customer: { name: 'Ilse Varga', email: 'ilse@example.test', phones: ['555-0142'], language: 'en' },
    property: { address: '7 Heron Loop, Alder Gap', state: 'VA', timeZone: 'America/New_York', gateCode: '', notes: '' },
    complaint: { words: 'Water comes in at the patio door when it pours.', depth: 0.08, startsAfter: 1200, staysFor: 21_600, door: 'Patio slider', enteredHouse: true, onDryDays: false, timesPerYear: 3, tried: '', rainDate: null },
  });
  expect(status).toBe(201);
  return body.id;
}

/** 1. The owner takes the call. */
export async function takeCall(page: Page, title: string): Promise<string> {
  await page.goto('/jobs/new');
  await page.getByLabel('Name of the job').fill(title);
  await page.getByLabel('Name', { exact: true }).fill('Ilse Varga');
  await page.getByLabel('Address').fill('7 Heron Loop, Alder Gap');
  await page.getByLabel('State').selectOption('VA');
  await page.getByLabel('In their words').fill('Water comes in at the patio door when it pours.');
  await page.getByLabel('How deep it stands').fill('3 1/4"');
  await page.getByLabel('How soon after the rain starts').fill('20');
  await page.getByLabel('How long it stays').fill('6');
  await page.getByLabel('Which door or wall').fill('Patio slider');
  await page.getByLabel('Water came into the house').check();
  await page.getByRole('button', { name: 'Save as a new job' }).click();
  await expect(page.getByRole('heading', { level: 1, name: title })).toBeVisible();
  return page.url().split('/jobs/')[1]?.split(/[/?#]/)[0] ?? '';
}

/** 1. The owner says who estimates and who digs. */
export async function assign(page: Page): Promise<void> {
  const site = await part(page, 'Site');
  for (const role of ['estimator', 'crew']) await site.getByLabel(new RegExp(` as ${role}$`)).first().check();
  await site.getByRole('button', { name: 'Save the people' }).click();
  await expect(site.getByRole('button', { name: 'Save the people' })).toBeDisabled();
}

interface Shot {
  readonly point: string;
  readonly sight: 'Backsight' | 'Intermediate' | 'Foresight';
  readonly rod: string;
  readonly role?: string;
  readonly distance?: string;
}

/** Levels of an invented yard in feet, floor = 100.00, instrument at 104.32. */
const shots: readonly Shot[] = [
  { point: 'Finished floor', sight: 'Backsight', rod: "4.32'", role: 'Finished floor' },
  { point: 'Slider track', sight: 'Intermediate', rod: "4.39'", role: 'Sill to protect' },
  { point: 'Low spot', sight: 'Intermediate', rod: "4.70'", role: 'Low spot' },
  { point: 'Patio rim', sight: 'Intermediate', rod: "4.34'", role: 'Rim where it would spill' },
  { point: 'Channel invert', sight: 'Intermediate', rod: "5.17'", role: 'Invert of the collector' },
  { point: 'Street gutter', sight: 'Intermediate', rod: "4.97'", role: 'Candidate outlet', distance: '140 ft' },
  { point: 'Lawn', sight: 'Intermediate', rod: "4.32'", role: 'Ground' },
  { point: 'Finished floor', sight: 'Foresight', rod: "4.32'" },
];
const pond = [['99.62', '20'], ['99.70', '140'], ['99.80', '300'], ['99.93', '640'], ['99.98', '900']] as const;

/** 2. The estimator keeps the level book and tests the old drain. */
export async function takeLevels(page: Page): Promise<void> {
  const levels = await part(page, 'Levels');
  await levels.getByRole('button', { name: 'Open a level book' }).click();
  const book = levels.locator('.level-book > li');
  for (const [at, shot] of shots.entries()) {
    if (at > 0) await levels.getByRole('button', { name: 'Add a shot' }).click();
    const row = book.nth(at);
    await row.getByLabel('Point').fill(shot.point);
    await row.getByLabel(shot.sight).fill(shot.rod);
  }
  const roles = levels.locator('.point-roles');
  for (const shot of shots) {
    if (shot.role === undefined) continue;
    await roles.getByLabel(shot.point, { exact: true }).selectOption({ label: shot.role });
    if (shot.distance !== undefined) await roles.getByLabel(`Pipe length to ${shot.point}`).fill(shot.distance);
  }
  for (const [at, [level, area]] of pond.entries()) {
    await levels.getByRole('button', { name: 'Add a level' }).click();
    const row = levels.locator('.stage-area > li').nth(at);
    await row.getByLabel('Water level').fill(`${level}'`);
    await row.getByLabel('Wet area').fill(area);
  }
  await levels.getByRole('button', { name: 'Add a hose test' }).click();
  await levels.getByLabel('Hose flow').fill('7.5');
  await levels.getByLabel('Backed up after').fill('6');
  await levels.getByRole('button', { name: 'Save the survey' }).click();
  await expect(levels.getByText(/Gravity is short by 0\.9\sft to Street gutter/)).toBeVisible();
  await expect(levels.getByText(/The book closes/)).toBeVisible();
  await expect(levels.getByText(/backed up after 45\sgal, about 68\.9\sft of open pipe/)).toBeVisible();
}

/** 3. The estimator uploads the file of the NOAA Atlas 14 server for Pulaski, Virginia. */
export async function takeRain(page: Page): Promise<void> {
  const rain = await part(page, 'Rain');
  await rain.locator('input[type=file]').setInputFiles(path.join(inRoot('packages', 'calc', 'fixtures', 'rain'), 'pulaskiDepthInches.csv'));
  await expect(rain.getByRole('table')).toContainText('0.45');
  await expect(rain.getByText(/Alternating block over 24 h, 25-year/)).toBeVisible();
}
