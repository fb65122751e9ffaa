import { expect, type Locator, type Page } from '@playwright/test';
import sharp from 'sharp';

/** An invented site seen from above: 40 pixels are one meter. */
export const pixelsPerMeter = 40;
export const picture = { width: 1400, height: 1000 } as const;

type Pixel = readonly [x: number, y: number];

/** Outlines as they stand in the picture [pixels], each with the surface of the design that it measures. */
export const outlines: readonly { readonly use: string; readonly measures: string; readonly corners: readonly Pixel[] }[] = [
  { use: 'Paving or slab', measures: 'Patio', corners: [[460, 420], [787, 420], [787, 580], [460, 580]] },
  { use: 'Roof', measures: 'Roof, east half', corners: [[860, 120], [1201, 120], [1201, 242], [860, 242]] },
  { use: 'Roof', measures: 'Roof, west half', corners: [[120, 120], [461, 120], [461, 242], [120, 242]] },
  { use: 'Lawn', measures: 'Back lawn', corners: [[300, 640], [940, 640], [940, 840], [596, 840], [596, 960], [300, 960]] },
];

/** Area of an outline of the picture [m2], by the shoelace formula. */
export function areaOf(corners: readonly Pixel[]): number {
  const twice = corners.reduce((sum, [x, y], i) => {
    const [nx, ny] = corners[(i + 1) % corners.length] ?? [x, y];
    return sum + x * ny - nx * y;
  }, 0);
  return Math.abs(twice) / 2 / pixelsPerMeter ** 2;
}

/** The picture itself, with a bar of ten meters. */
export async function sitePicture(): Promise<Buffer> {
  const shapes = outlines.map(({ corners }) => `<polygon points="${corners.map((at) => at.join(',')).join(' ')}" fill="#cbd5c0" stroke="#333" stroke-width="2"/>`).join('');
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${String(picture.width)}" height="${String(picture.height)}"><rect width="100%" height="100%" fill="#e8e4d8"/>${shapes}<path d="M900 940H1300" stroke="#000" stroke-width="4"/></svg>`;
  return sharp(Buffer.from(svg)).jpeg({ quality: 90 }).toBuffer();
}

/** Ends of the bar in the picture. */
export const bar: readonly Pixel[] = [[900, 940], [1300, 940]];

/**
 * Eight surveyed points in feet: the bottom and the rim of a hollow with plane sides, bottom 4 x 5 ft at 99.62, rim 26 x 32.5 ft at 99.98.
 * Such a body is a frustum of a pyramid: volume = h/3 (A1 + A2 + sqrt(A1 A2)). Source: handbook formula of solid geometry.
 */
export const pointList = [
  'PNT,NORTHING,EASTING,ELEV,DESC',
  '101,5000.00,2000.00,99.98,RIM', '102,5000.00,2032.50,99.98,RIM', '103,5026.00,2032.50,99.98,RIM', '104,5026.00,2000.00,99.98,RIM',
  '105,5011.00,2013.75,99.62,LOW', '106,5011.00,2018.75,99.62,LOW', '107,5015.00,2018.75,99.62,LOW', '108,5015.00,2013.75,99.62,LOW', '',
].join('\r\n');
const cubicFoot = 0.3048 ** 3;
export const hollowVolume = (0.36 / 3) * (20 + 845 + Math.sqrt(20 * 845)) * cubicFoot;

/** Volume below the last row of a stage-area table, by the frustum rule [m3]. */
export function volumeOf(rows: readonly { readonly level: number; readonly area: number }[]): number {
  return rows.slice(1).reduce((sum, { level, area }, i) => {
    const below = rows[i] ?? { level, area };
    return sum + ((level - below.level) / 3) * (area + below.area + Math.sqrt(area * below.area));
  }, 0);
}

/** Opens the plan of the draft and begins it. */
export async function beginPlan(design: Locator): Promise<Locator> {
  const fold = design.locator('details', { has: design.page().getByText('Plan', { exact: true }) });
  if ((await fold.getAttribute('open')) === null) await fold.locator('summary').first().click();
  await fold.getByRole('button', { name: 'Draw the plan' }).click();
  await expect(fold.getByRole('application')).toBeVisible();
  return fold;
}

/** Where a pixel of the picture stands on the screen. */
export async function onScreen(page: Page, [x, y]: Pixel): Promise<{ readonly x: number; readonly y: number }> {
  const image = page.locator('.plan-canvas image');
  const box = await image.boundingBox();
  if (!box) throw new Error('the picture lies below the plan');
  return { x: box.x + (x / picture.width) * box.width, y: box.y + (y / picture.height) * box.height };
}

export async function tap(page: Page, at: Pixel): Promise<void> {
  const place = await onScreen(page, at);
  await page.mouse.click(place.x, place.y);
}
