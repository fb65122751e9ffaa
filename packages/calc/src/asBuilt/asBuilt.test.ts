import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { DesignDocument, Pipe } from '../document/document.ts';
import { evaluate } from '../evaluate/evaluate.ts';
import { fullPipe } from '../pipe/manning.ts';
import { asBuiltDocument } from './asBuiltDocument.ts';
import { leastMoves } from './leastMoves.ts';
import { builtProfile, type PipeShot } from './pipeProfile.ts';

const foot = 0.3048;
const inch = foot / 12;
const eighthPerFoot = 1 / 96;
const gpm = 0.003785411784 / 60;
/** Shots in feet of distance and inches of level. */
const shots = (...pairs: readonly (readonly [feet: number, inches: number])[]): PipeShot[] => pairs.map(([feet, inches]) => ({ at: feet * foot, level: inches * inch }));
const profile = (taken: readonly PipeShot[], least = eighthPerFoot) => builtProfile(taken, 4 * inch, 0.01, least);

describe('the inverts of a laid pipe', () => {
  it('an even fall of 1/8 in per ft is good everywhere and carries what the table says: 113 gpm in a 4 in pipe', () => {
    const even = profile(shots([0, 10], [8, 9], [16, 8], [24, 7]));
    expect(even.segments.map(({ kind }) => kind)).toEqual(['falls', 'falls', 'falls']);
    expect([even.bellies, even.corrections]).toEqual([[], []]);
    // Source: Manning full flow, 4 in, n 0.010, 1.04 %, table of the trade's pipes, to its last digit.
    expect(even.fullFlow / gpm).toBeCloseTo(113, -0.3);
    expect(even.fullFlow).toBeCloseTo(fullPipe({ diameter: 4 * inch, slope: eighthPerFoot, roughness: 0.01 }).flow, 12);
  });

  it('a joint that lies 1/2 in too high makes a belly before it: segment, depth and what to lower', () => {
    // By hand: even falls would be 10, 9, 8, 7 in. The third joint at 9.5 in stands 1/2 in over the second, so that 1/2 in stays there;
    // at 8 in, 1 1/2 in lower, every segment falls 1 in again.
    const bellied = profile(shots([0, 10], [8, 9], [16, 9.5], [24, 7]));
    expect(bellied.segments.map(({ kind }) => kind)).toEqual(['falls', 'back', 'falls']);
    expect(bellied.segments[1]?.fall).toBeCloseTo(-0.5 * inch, 12);
    expect(bellied.bellies).toEqual([{ at: 8 * foot, depth: expect.closeTo(0.5 * inch, 12), until: 16 * foot }]);
    expect(bellied.corrections).toEqual([{ shot: 2, at: 16 * foot, raise: expect.closeTo(-1.5 * inch, 12) }]);
    // The pressure line must pass the hump: 1/2 in over 16 ft, an eighth of the slope asked for times two: 1/384.
    expect(bellied.governingSlope).toBeCloseTo(1 / 384, 12);
    expect(bellied.fullFlow).toBeCloseTo(fullPipe({ diameter: 4 * inch, slope: 1 / 384, roughness: 0.01 }).flow, 12);
  });

  it('a sagging joint is raised, and does not lessen what a full pipe carries', () => {
    const sagging = profile(shots([0, 10], [8, 8], [16, 8.5], [24, 7]));
    expect(sagging.segments.map(({ kind }) => kind)).toEqual(['falls', 'back', 'falls']);
    expect(sagging.bellies).toEqual([{ at: 8 * foot, depth: expect.closeTo(0.5 * inch, 12), until: 16 * foot }]);
    // Between 0 and 16 ft it falls 1 1/2 in: three quarters of the even 2 in, and this decides.
    expect(sagging.governingSlope).toBeCloseTo(1.5 / (16 * 12), 12);
  });

  it('a hump as high as the head carries nothing before it backs up; a flat and a slack segment are named', () => {
    const dammed = profile(shots([0, 10], [8, 9.75], [16, 9.75], [24, 10.5]));
    expect(dammed.segments.map(({ kind }) => kind)).toEqual(['slack', 'flat', 'back']);
    expect([dammed.governingSlope <= 0, dammed.fullFlow]).toEqual([true, 0]);
    expect(dammed.bellies).toEqual([{ at: 8 * foot, depth: expect.closeTo(0.75 * inch, 12), until: 24 * foot }]);
  });

  it('two bellies are two, from the upper end down', () => {
    const two = profile(shots([0, 10], [4, 9], [8, 9.25], [12, 8], [16, 8.5], [20, 7]));
    expect(two.bellies.map(({ at, until }) => [at / foot, until / foot])).toEqual([[4, 8], [12, 16]]);
  });

  it.each([
    ['one shot', shots([0, 10]), 'asBuilt.fewShots'], ['a distance that does not rise', shots([0, 10], [8, 9], [8, 8]), 'asBuilt.notRising'],
    ['a level that is no number', [{ at: 0, level: Number.NaN }, { at: 1, level: 0 }], 'value.notFinite'],
  ])('%s is refused', (_name, taken, code) => {
    expect(() => profile(taken)).toThrow(expect.objectContaining({ code }));
  });
});

describe('the least moves', () => {
  /** Every line through shot heights that falls enough, by trial; the least sum of moves. */
  function byTrial(at: readonly number[], levels: readonly number[], least: number): number {
    const heights = levels.map((level, i) => level + least * at[i]!);
    let best = Infinity;
    const walk = (i: number, before: number, sum: number): void => {
      if (i === heights.length) best = Math.min(best, sum);
      else for (const height of heights) if (height <= before) walk(i + 1, height, sum + Math.abs(height - heights[i]!));
    };
    walk(0, Infinity, 0);
    return best;
  }

  it.each([
    [[0, 1, 2, 3], [5, 4, 4.5, 3]], [[0, 2, 3, 5, 6], [1, 2, 0, 3, 1]], [[0, 1, 4, 5, 9], [9, 8.9, 9.2, 8, 8.1]], [[0, 1, 2], [3, 2, 1]],
  ])('over %j with levels %j are as small as trial finds, and the line falls enough', (at, levels) => {
    for (const least of [0, 0.01, 0.4, 2]) {
      const line = leastMoves(at, levels, least);
      expect(line.reduce((sum, level, i) => sum + Math.abs(level - levels[i]!), 0)).toBeCloseTo(byTrial(at, levels, least), 9);
      line.slice(1).forEach((level, i) => expect(line[i]! - level).toBeGreaterThanOrEqual(least * (at[i + 1]! - at[i]!) - 1e-9));
    }
  });
});

describe('the design as it was built', () => {
  const design = JSON.parse(readFileSync(new URL('../../../../prisma/seed/sites/tern-hollow.json', import.meta.url), 'utf8')) as DesignDocument;
  const pipe = design.system.parts.find((part): part is Pipe => part.id === 'P1')!;
  const along = (share: number, lower: number): PipeShot => ({ at: share * pipe.length, level: pipe.invertUp + share * (pipe.invertDown - pipe.invertUp) - lower });
  const freeboard = (document: DesignDocument) => evaluate(document, { band: false }).results.freeboards.find(({ returnPeriod }) => returnPeriod === 25)!.onTwin;

  it('shot on its line it gives the same freeboard as designed', () => {
    const built = asBuiltDocument(design, [], [{ part: 'P1', shots: [along(0, 0), along(0.4, 0), along(1, 0)] }]);
    expect(built.system.parts.filter(({ kind }) => kind === 'pipe').map(({ id, drainsTo }) => [id, drainsTo])).toEqual([['P1', 'P1-2'], ['P1-2', 'B1']]);
    expect(freeboard(built)).toBeCloseTo(freeboard(design), 6);
  });

  it('with a hump of four inches it loses 0.8 in of freeboard, and the segment that climbs is named', () => {
    const built = asBuiltDocument(design, [], [{ part: 'P1', shots: [along(0, 0), along(0.3, 0), along(0.6, -4 * inch), along(1, 0)] }]);
    expect(freeboard(built)).toBeLessThan(freeboard(design) - 0.02);
    const found = evaluate(built, { band: false }).findings.filter(({ code }) => code === 'G1.backFall');
    expect(found.map(({ at }) => at)).toEqual(['P1-2']);
  });

  it('takes levels of other parts, passes over what the design has not, and leaves the design alone', () => {
    const before = JSON.stringify(design);
    const built = asBuiltDocument(design, [{ part: 'B1', field: 'onLevel', level: 29 }, { part: 'gone', field: 'onLevel', level: 1 }, { part: 'B1', field: 'name', level: 1 }], []);
    expect(built.system.parts.find(({ id }) => id === 'B1')).toMatchObject({ onLevel: 29, name: 'Pump basin 30 x 48' });
    expect(JSON.stringify(design)).toBe(before);
  });
});
