import { expect, test } from 'vitest';
import { baseDocuments } from '../testing/cases/case.ts';
import { applyRemedy, partPath, patched } from './patch.ts';

const { tern } = baseDocuments;

test('a patch sets what it names and leaves the document alone', () => {
  const before = structuredClone(tern);
  const left = patched(tern, [{ path: partPath(tern, 'CH1', 'grate/slotWidth'), value: 0.01 }, { path: '/rain/storm/method', value: 'nrcsII' }, { path: '/site/sills/0/soilFall', value: 0.1 }]);
  expect(tern).toEqual(before);
  expect(left.rain.storm.method).toBe('nrcsII');
  expect(left.site.sills[0]!.soilFall).toBe(0.1);
  const channel = left.system.parts.find((part) => part.kind === 'channel')!;
  expect(channel.grate).toEqual({ ...before.system.parts.find((part) => part.kind === 'channel')!.grate, slotWidth: 0.01 });
  expect(left.system.parts.filter(({ id }) => id !== 'CH1')).toEqual(before.system.parts.filter(({ id }) => id !== 'CH1'));
});

test('an empty remedy changes nothing', () => {
  expect(applyRemedy(tern, { code: 'remedy.backup', params: {}, patch: [] })).toEqual(tern);
});
