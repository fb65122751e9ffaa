import { describe, expect, test } from 'vitest';
import { cylinder, emptyRuns, finishedRuns, headAt, withRun } from './runs.ts';

const typed = (seconds: number | null) => ({ upperLevel: 29.5, lowerLevel: 29.3, volume: 0.05, seconds, emptyLine: false });

describe('runs of a pump-down', () => {
  test('marks and volume go on to the runs below; times do not', () => {
    const runs = withRun(withRun(emptyRuns(null), 0, { upperLevel: 29.5, volume: 0.05 }), 0, { seconds: 30 });
    expect(runs.map(({ upperLevel, volume, seconds }) => [upperLevel, volume, seconds])).toEqual([[29.5, 0.05, 30], [29.5, 0.05, null], [29.5, 0.05, null]]);
  });
  test('a run of its own keeps its own marks', () => {
    const own = withRun(withRun(emptyRuns(null), 1, { upperLevel: 29.4 }), 0, { upperLevel: 29.5 });
    expect(own.map(({ upperLevel }) => upperLevel)).toEqual([29.5, 29.4, 29.4]);
  });
  test('runs without a time are not sent; a first run without one keeps the form open', () => {
    expect(finishedRuns([typed(30), typed(31), typed(null)])).toHaveLength(2);
    expect(finishedRuns([typed(null), typed(30), typed(null)])).toBeNull();
  });
  test('marks upside down are not sent', () => expect(finishedRuns([{ ...typed(30), upperLevel: 29.2 }])).toBeNull());
});

test('a 30 in basin holds 36.7 gal a foot (geometry: pi/4 x 2.5 ft x 2.5 ft x 1 ft x 7.4805 gal)', () => {
  expect(cylinder({ diameter: 0.762 } as never, 0.3048, 0) / 0.003785411784).toBeCloseTo(36.72, 2);
});

test('a head between two samples of a curve', () => {
  const curve = [{ flow: 0, head: 8 }, { flow: 0.002, head: 6 }];
  expect([headAt(curve, 0), headAt(curve, 0.001), headAt(curve, 0.003)]).toEqual([8, 7, null]);
});
