import { stormMargins, stormGraph, windowOf } from '@yardfall/drawing';
import type { DesignDocument, StormRun } from '@yardfall/calc';
import { expect, test } from 'vitest';
import { inputMargins, thumbWidth } from '../../../components/sliderPlace.ts';
import { samplesShown } from './samplesShown.ts';

const step = 60;
const samples = Array.from({ length: 240 }, (_, index) => index);
const run: StormRun = {
  returnPeriod: 25, start: 36_000, step, intensity: samples.map((at) => (Math.abs(at - 120) < 5 ? 5e-5 : 2e-6)), inflow: samples.map((at) => Math.max(0, 0.004 - Math.abs(at - 122) * 1e-4)),
  pumpFlow: samples.map(() => 0), pondLevel: samples.map((at) => 30 + Math.max(0, 0.05 - Math.abs(at - 126) * 0.001)), basinLevel: [], events: [], starts: 0, runTime: 0, maxPond: 30.05,
};
const document = { site: { sills: [], lowSpots: [] }, system: { parts: [] } } as unknown as DesignDocument;

test('the slider runs over the samples that the graph shows, the first and the last included', () => {
  const { first, last } = samplesShown(run);
  expect([run.start + first * step, run.start + last * step]).toEqual(windowOf(run));
  expect(first).toBeGreaterThan(0);
  expect(last).toBeLessThan(samples.length - 1);
});

test('the middle of the thumb stands exactly over the cursor of the graph', () => {
  const { first, last } = samplesShown(run);
  const { marginLeft, width: inputWidth } = inputMargins(stormMargins);
  for (const width of [340, 358, 1100]) {
    const input = width - Number(/- (\d+)px/.exec(inputWidth)?.[1]);
    for (const moment of [first, first + 17, last]) {
      // A browser moves the thumb inside its input.
      const thumb = marginLeft + thumbWidth / 2 + ((moment - first) / (last - first)) * (input - thumbWidth);
      const { extent, items } = stormGraph(document, run, { width, height: 400, cursor: run.start + moment * step });
      const cursor = items.find((item) => item.kind === 'text' && item.label.code === 'drawing.cursor');
      const x = cursor?.kind === 'text' ? ((cursor.at[0] - extent.x0) / (extent.x1 - extent.x0)) * width : Number.NaN;
      expect(thumb).toBeCloseTo(x, 6);
    }
  }
});
