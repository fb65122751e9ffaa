import { expect, test } from 'vitest';
import { refusalOf } from './choice.ts';

test.each([
  ['a photo', 'image/jpeg', 5e6, null], ['a photo of an iPhone', 'image/heic', 5e6, null], ['a video', 'video/quicktime', 400e6, null],
  ['a PDF', 'application/pdf', 10, 'type'], ['a file without a type', '', 10, 'type'], ['a picture that is a program', 'image/svg+xml', 10, 'type'],
  ['a photo above its limit', 'image/jpeg', 25e6 + 1, 'photo'], ['a video above its limit', 'video/mp4', 500e6 + 1, 'video'], ['more than the link still takes', 'video/mp4', 300e6, 'room'],
] as const)('%s: %s of %d bytes', (what, type, size, refusal) => {
  expect(refusalOf({ type, size }, what === 'more than the link still takes' ? 200e6 : 2e9)).toBe(refusal);
});
