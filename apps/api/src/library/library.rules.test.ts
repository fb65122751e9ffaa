import type { LibraryContent } from '@yardfall/contracts';
import { describe, expect, it } from 'vitest';
import { contentProblem } from './library.rules.ts';

const pump = (...points: readonly (readonly [number, number])[]): LibraryContent => ({ kind: 'pump', curve: points.map(([flow, head]) => ({ flow, head })), solids: 0.0127, minSubmergence: 0.1 });

describe('a pump of the library', () => {
  it('is taken with its shut-off head and a falling curve, from either end', () => {
    expect(contentProblem(pump([0, 6], [0.001, 5], [0.002, 3]))).toBeNull();
    expect(contentProblem(pump([0.002, 3], [0.001, 5], [0, 6]))).toBeNull();
  });

  it('is refused with two points, without a shut-off head, and where the curve rises', () => {
    expect(contentProblem(pump([0, 6], [0.002, 3]))).toEqual({ code: 'library.fewPoints', path: 'curve', params: { count: 2, least: 3 } });
    expect(contentProblem(pump([0.0005, 6], [0.001, 5], [0.002, 3]))?.code).toBe('library.noShutOff');
    expect(contentProblem(pump([0, 6], [0.001, 6.5], [0.002, 3]))).toEqual({ code: 'library.curveRises', path: 'curve.1', params: { point: 2 } });
    expect(contentProblem(pump([0, 6], [0.001, 5], [0.001, 4]))?.code).toBe('library.curveRises');
  });
});
