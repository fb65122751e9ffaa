import { describe, expect, it } from 'vitest';
import type { DesignDocument, Pipe } from '../document/document.ts';
import { expectProblems } from '../testing/expectProblems.ts';
import { siteDocument } from '../testing/sites.ts';
import { asBuiltDocument } from './asBuiltDocument.ts';
import { leastMoves } from './leastMoves.ts';
import { builtProfile, type PipeShot } from './pipeProfile.ts';

const design = siteDocument('tern-hollow');
const laid: Pipe = {
  ...design.system.parts.find((part): part is Pipe => part.kind === 'pipe')!,
  id: 'D', name: 'Drain', length: 12, invertUp: 2, invertDown: 1.9, bends90: 1, bends45: 2, cleanouts: 3, drainsTo: 'B1',
};
const withParts = (...parts: DesignDocument['system']['parts']): DesignDocument => ({ ...design, system: { ...design.system, parts } });
const shots = (...pairs: readonly (readonly [at: number, level: number])[]): PipeShot[] => pairs.map(([at, level]) => ({ at, level }));
const built = (document: DesignDocument, taken: readonly PipeShot[]): Pipe[] => asBuiltDocument(document, [], [{ part: 'D', shots: taken }]).system.parts.filter((part): part is Pipe => part.kind === 'pipe');

describe('a pipe as it was shot', () => {
  it('at three places becomes two in series: bends and cleanouts in the first, each with its own length and inverts', () => {
    expect(built(withParts(laid), shots([0, 2.1], [5, 2.05], [12.5, 1.95]))).toEqual([
      { ...laid, name: 'Drain 1/2', length: 5, invertUp: 2.1, invertDown: 2.05, drainsTo: 'D-2' },
      { ...laid, id: 'D-2', name: 'Drain 2/2', length: 7.5, invertUp: 2.05, invertDown: 1.95, bends90: 0, bends45: 0, cleanouts: 0 },
    ]);
  });
  it('at its ends keeps its name', () => {
    expect(built(withParts(laid), shots([0, 2.1], [11, 1.95]))).toEqual([{ ...laid, length: 11, invertUp: 2.1, invertDown: 1.95 }]);
  });
  it('takes no id that another part has', () => {
    const others = ['D-2', 'D-2x'].map((id): Pipe => ({ ...laid, id }));
    expect(built(withParts(laid, ...others), shots([0, 2.1], [5, 2.05], [12.5, 1.95])).map(({ id, drainsTo }) => [id, drainsTo])).toEqual([['D', 'D-2xx'], ['D-2xx', 'B1'], ['D-2', 'B1'], ['D-2x', 'B1']]);
  });
  it('is refused with one shot, with two at one place, and without a size, a roughness or a fall', () => {
    const level = shots([0, 2], [4, 2]);
    expectProblems([
      [() => built(withParts(laid), shots([0, 2])), 'asBuilt.fewShots'], [() => built(withParts(laid), shots([0, 2], [0, 1])), 'asBuilt.notRising at shots/1/at'],
      [() => builtProfile(level, 0, 0.01, 0.01), 'value.notPositive at diameter'], [() => builtProfile(level, 0.1, 0, 0.01), 'value.notPositive at roughness'],
      [() => builtProfile(level, 0.1, 0.01, 0), 'value.notPositive at least'],
    ]);
  });
});

it('of lines that move as little the lower one is taken, wherever the choice falls', () => {
  // Without a fall asked for: 0 and 1 meet at either height for one meter in all; so do the first two of 0, 1, 0.
  expect([leastMoves([0, 1], [0, 1], 0), leastMoves([0, 1, 2], [0, 1, 0], 0)]).toEqual([[0, 0], [0, 0, 0]]);
});

describe('the profile, at its limits', () => {
  const profile = (...pairs: readonly (readonly [at: number, level: number])[]) => builtProfile(shots(...pairs), 0.1, 0.01, 0.01);
  it('distances count from the first shot, wherever the tape began', () => {
    expect(profile([4, 2], [8, 1.5]).governingSlope).toBe(0.125);
  });
  it('a hump as high as the upper end carries nothing, and holds the water that stands before it', () => {
    const humped = profile([0, 2], [4, 1.5], [8, 2], [12, 1]);
    expect([humped.governingSlope, humped.fullFlow, humped.bellies]).toEqual([0, 0, [{ at: 4, depth: 0.5, until: 8 }]]);
  });
  it('a hump over the upper end holds water back from the very first shot', () => {
    expect(profile([0, 2], [4, 2.25], [8, 1]).bellies).toEqual([{ at: 0, depth: 0.25, until: 4 }]);
  });
});
