import { createHash } from 'node:crypto';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { doubtsOf, sharpnessOf } from './look.ts';

const [width, height] = [320, 240];
/** Boards, gravel and a lawn as a camera sees them: edges and grain, the same every time. */
const scene = Buffer.from(Array.from({ length: width * height }, (_, at) => {
  const [x, y] = [at % width, Math.floor(at / width)];
  const grain = createHash('sha256').update(String(at)).digest()[0] ?? 0;
  return Math.min(255, (Math.floor(x / 20) % 2 === 0 ? 90 : 170) + (y > 160 ? grain / 4 : 0));
}));
const picture = (sigma: number) => (sigma === 0 ? sharp(scene, { raw: { width, height, channels: 1 } }) : sharp(scene, { raw: { width, height, channels: 1 } }).blur(sigma)).toColourspace('b-w');
const sharpness = async (sigma: number) => sharpnessOf(await picture(sigma).raw().toBuffer(), width);

describe('sharpness', () => {
  // sharp (libvips) gives the same measure: the standard deviation of a Laplacian convolution. Its kernel is divided by
  // nine (sharp, src/stats.cc, from memory; the ratio of the two shows it), and it goes over the border too, which we leave out.
  test.each([0, 1, 3])('is what libvips finds, softened by %d pixels', async (sigma) => {
    const theirs = 9 * (await sharp(await picture(sigma).png().toBuffer()).stats()).sharpness;
    const own = await sharpness(sigma);
    expect(Math.abs(own - theirs) / theirs).toBeLessThan(0.03);
  });

  test('of a picture without anything in it is nothing', () => {
    expect(sharpnessOf(new Uint8Array(10_000).fill(128), 100)).toBe(0);
  });

  test('asks to look again at a blurred picture, and not at a sharp one', async () => {
    expect(doubtsOf({ width: 4000, height: 3000, sharpness: await sharpness(0) })).toEqual([]);
    expect(doubtsOf({ width: 4000, height: 3000, sharpness: await sharpness(6) })).toEqual(['soft']);
    expect(doubtsOf({ width: 500, height: 400, sharpness: await sharpness(0) })).toEqual(['small']);
  });
});
