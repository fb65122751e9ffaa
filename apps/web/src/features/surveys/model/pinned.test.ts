import { readFileSync } from 'node:fs';
import type { DesignDocument } from '@yardfall/calc';
import { expect, test } from 'vitest';
import type { Shot } from './fieldBook.ts';
import { pinAt, withPins } from './pinned.ts';

const drawn = JSON.parse(readFileSync(new URL('../../../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
const placed: DesignDocument = { ...drawn, site: { ...drawn.site, spotLevels: [{ id: 'V1', name: 'Rim', level: 30.47, station: null, position: { x: 0, y: 0 } }, { id: 'V2', name: 'Lawn', level: 30.44, station: null, position: { x: 3, y: 0 } }] } };
const shot = (id: string, point: string, pin: Shot['pin'], struck = false): Shot => ({ id, entry: `reading:${id}`, kind: 'intermediate', point, role: 'grade', value: 1.5, struck, distance: null, tailwater: null, photoIds: [], pin, inOffice: true });
const shots = [shot('a', 'Rim', { x: 1, y: 1 }), shot('b', 'Corner', { x: 2, y: 2 }), shot('c', 'Away', { x: 9, y: 9 }, true), shot('d', 'Lawn', null), shot('e', 'Hand', { x: 4, y: 4 })];
const levels = { levelOf: (id: string) => (id === 'b' ? 30.3 : 30.5) };

test('pinned shots stand at their places with their levels; the newer of a name counts, and the one in hand and a struck one are left out', () => {
  const { spotLevels } = withPins(placed, { shots }, levels, { id: 'e', point: 'Hand' }).site;
  expect(spotLevels.map(({ name, level, position }) => [name, level, position])).toEqual([
    ['Lawn', 30.44, { x: 3, y: 0 }], ['Rim', 30.5, { x: 1, y: 1 }], ['Corner', 30.3, { x: 2, y: 2 }],
  ]);
});

test('a spot level is not drawn below the thumb that puts the same point elsewhere', () => {
  expect(withPins(placed, { shots: [] }, levels, { id: 'x', point: 'Lawn' }).site.spotLevels.map(({ name }) => name)).toEqual(['Rim']);
});

test('a place is kept to a tenth of a meter', () => {
  expect(pinAt({ x: 1.26, y: -0.449 })).toEqual({ x: 1.3, y: -0.4 });
});
