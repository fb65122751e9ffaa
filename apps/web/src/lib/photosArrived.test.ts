import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import { keepPhoto, markRefused, outboxNow, removeEntries } from './outbox.ts';
import { photosArrived } from './photosArrived.ts';

const keep = (id: string) => keepPhoto({ id, memberId: 'ana', jobId: 'job', meta: { id } as never, file: new Blob(['x']) });
const entry = (id: string) => outboxNow().filter((one) => one.id === id);

test('what names a photo waits until the photo has left this phone', async () => {
  await keep('one');
  const order: string[] = [];
  const waiting = photosArrived(['one', null]).then(() => order.push('arrived'));
  await photosArrived(['elsewhere', undefined]);
  order.push('left');
  await removeEntries(entry('one'));
  await waiting;
  expect(order).toEqual(['left', 'arrived']);
});

test('a photo that was refused, or does not get through in time, is told', async () => {
  await keep('two');
  await expect(photosArrived(['two'], 10)).rejects.toMatchObject({ code: 'offline' });
  const waiting = photosArrived(['two']);
  await markRefused(entry('two'), 'photo.notAnImage');
  await expect(waiting).rejects.toMatchObject({ code: 'photo.notAnImage' });
  await expect(photosArrived(['two'])).rejects.toMatchObject({ code: 'photo.notAnImage' });
});
