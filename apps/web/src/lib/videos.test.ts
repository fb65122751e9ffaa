import { expect, test } from 'vitest';
import { isFreeLink, videoType } from './videos.ts';

test('a video goes by itself over Wi-Fi or a cable alone, never where the browser says nothing or is asked to save', () => {
  expect([{ type: 'wifi' }, { type: 'ethernet' }].map((link) => isFreeLink(link))).toEqual([true, true]);
  expect([undefined, {}, { type: 'cellular' }, { type: 'unknown' }, { type: 'wifi', saveData: true }].map((link) => isFreeLink(link ?? {}))).toEqual([false, false, false, false, false]);
});

test('how a recorder coded a video is no part of its type', () => {
  expect(['video/mp4', 'video/webm;codecs=vp8', 'video/x-msvideo', 'image/jpeg', ''].map((type) => videoType({ type }))).toEqual(['video/mp4', 'video/webm', null, null, null]);
});
