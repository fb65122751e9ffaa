import { expect, test } from 'vitest';
import { projection } from '../svg/project.ts';
import { section } from '../section.ts';
import { ternHollow } from '../testing/tern-hollow.ts';
import { stationAt } from './pins.ts';

const pin = (id: string, part: string | null, point: { station: number; level: number } | null) => ({ id, part, point });
// Wide and low, so that the long discharge line is broken.
const size = { width: 360, height: 140, detail: 'mini' } as const;

test('a photo stands at its point, else at its part; one whose part is gone has no pin', () => {
  const list = section(ternHollow, null, { ...size, breaks: false, pins: [pin('a', 'P1', { station: 2, level: 29.5 }), pin('b', 'P1', null), pin('c', 'gone', null), pin('d', null, null)] });
  expect(list.pins?.map(({ id }) => id)).toEqual(['a', 'b']);
  expect(list.pins?.[0]?.at).toEqual([2, 29.5]);
});

test('a point that is pressed is the station that was drawn there, on both sides of every break', () => {
  const list = section(ternHollow, null, size);
  expect(list.breaks.length).toBeGreaterThan(0);
  const end = Math.max(...list.breaks.map(({ to }) => to)) + 1;
  const stations = [0, 0.7, 2, end];
  const { pins = [], extent, stations: drawn = [] } = section(ternHollow, null, { ...size, pins: stations.map((station, at) => pin(String(at), null, { station, level: (list.extent.y0 + list.extent.y1) / 2 })) });
  expect(pins).toHaveLength(stations.length);
  const view = projection(extent, size.width, size.height);
  for (const [at, one] of pins.entries()) expect(stationAt({ stations: drawn }, view.toDrawing(view.toPixels(one.at))[0])).toBeCloseTo(stations[at] ?? NaN, 9);
});

test('what lies past the window of the house has no pin there', () => {
  const far = section(ternHollow, null, { ...size, window: 'house', pins: [pin('far', null, { station: 40, level: 29 }), pin('near', null, { station: 1, level: 29 })] });
  expect(far.pins?.map(({ id }) => id)).toEqual(['near']);
});
