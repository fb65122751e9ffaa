import { expect, test } from 'vitest';
import { acceptedPictures, pictureType } from './pictureType.ts';

test.each([
  ['IMG_1.jpg', 'image/jpeg', 'image/jpeg'], ['IMG_2.png', 'image/png', 'image/png'], ['IMG_3.HEIC', 'image/heic', 'image/heic'], ['IMG_4.heif', 'image/heif', 'image/heif'],
  ['IMG_5.HEIC', '', 'image/heic'], ['notes.pdf', 'application/pdf', null], ['notes', '', null], ['rain.mov', 'video/quicktime', null],
])('%s of the type "%s" is kept as %s', (name, type, kept) => expect(pictureType({ name, type })).toBe(kept));

test('a phone offers what is kept', () => {
  for (const type of ['image/jpeg', 'image/png', 'image/heic', '.heic']) expect(acceptedPictures.split(',')).toContain(type);
});
