import { describe, expect, test } from 'vitest';
import { checkDocument } from '../document/check.ts';
import type { DesignDocument, Plan, PlanShape, Position } from '../document/document.ts';
import { findLowSpots } from '../surface/lowSpots.ts';
import { triangulateSurvey } from '../surface/survey.ts';
import { demoSite } from '../testing/sites.ts';
import { crossing, isInside, leastDistance, outlineArea, ownCrossing, runLength, sidesOf } from './geometry.ts';
import { overlapArea } from './overlap.ts';
import { planChecks } from './planChecks.ts';
import { planGround } from './planGround.ts';
import { measureOf, planFigures } from './takeOff.ts';

const at = (x: number, y: number): Position => ({ x, y });
const box = (x0: number, y0: number, x1: number, y1: number): Position[] => [at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)];
const shape = (id: string, kind: PlanShape['kind'], use: PlanShape['use'], points: Position[], of: string | null = null): PlanShape => ({ id, name: `Shape ${id}`, kind, use, points, of });
function drawn(shapes: PlanShape[], picture: Plan['picture'] = null): DesignDocument {
  const document = demoSite('tern-hollow');
  return { ...document, site: { ...document.site, plan: { picture, north: 20, shapes } } };
}

/** An L of 4 x 4 with its upper right quarter missing. Area by hand: 16 - 4 = 12. */
const ell = [at(0, 0), at(4, 0), at(4, 2), at(2, 2), at(2, 4), at(0, 4)];

describe('geometry of the plan, figures by hand', () => {
  test('areas of outlines either way round; lengths of runs', () => {
    expect(outlineArea(ell)).toBe(12);
    expect(outlineArea([...ell].reverse())).toBe(12);
    expect(outlineArea([])).toBe(0);
    expect(runLength([at(0, 0), at(3, 4), at(3, 10)])).toBe(11);
  });

  test('sides cross at a place, or not when they only touch', () => {
    expect(crossing([at(0, 0), at(4, 4)], [at(0, 4), at(4, 0)])).toEqual(at(2, 2));
    expect(crossing([at(0, 0), at(4, 4)], [at(4, 4), at(8, 0)])).toBeNull();
    expect(crossing([at(0, 0), at(1, 0)], [at(2, -1), at(2, 1)])).toBeNull();
    expect(ownCrossing([at(0, 0), at(4, 4), at(4, 0), at(0, 4)], true)).toEqual(at(2, 2));
    expect(ownCrossing(ell, true)).toBeNull();
  });

  test('inside and outside of an outline with a corner cut out', () => {
    expect([at(1, 1), at(3, 1), at(1, 3)].map((place) => isInside(place, ell))).toEqual([true, true, true]);
    expect([at(3, 3), at(-1, 1), at(5, 1)].map((place) => isInside(place, ell))).toEqual([false, false, false]);
  });

  test('least distance between runs', () => {
    expect(leastDistance(sidesOf([at(0, 0), at(10, 0)], false), sidesOf([at(4, 3), at(4, 8)], false))).toEqual({ distance: 3, place: at(4, 0) });
    expect(leastDistance(sidesOf([at(0, 0), at(10, 0)], false), sidesOf([at(4, -3), at(4, 8)], false))?.distance).toBe(0);
  });
});

describe('area that two outlines share', () => {
  test.each([
    ['two boxes', box(0, 0, 4, 4), box(3, 1, 6, 3), 2],
    ['a box over the missing corner', ell, box(1, 1, 3, 3), 3],
    ['one within the other', box(0, 0, 10, 10), ell, 12],
    ['side by side', box(0, 0, 2, 2), box(2, 0, 4, 2), 0],
    ['apart', box(0, 0, 1, 1), box(5, 5, 6, 6), 0],
    // a square on its corner over a box of 2 x 2: four corners of legs 2 - sqrt 2 each are cut away from 2 x 2
    ['a square on its corner', box(-1, -1, 1, 1), [at(0, -Math.SQRT2), at(Math.SQRT2, 0), at(0, Math.SQRT2), at(-Math.SQRT2, 0)], 4 - 2 * (2 - Math.SQRT2) ** 2],
  ] as const)('%s', (_, one, other, area) => {
    expect(overlapArea(one, other)).toBeCloseTo(area, 12);
    expect(overlapArea(other, one)).toBeCloseTo(area, 12);
  });

  test('two stars agree with a count of small squares', () => {
    const star = (cx: number, cy: number, turn: number): Position[] => Array.from({ length: 14 }, (_, i) => {
      const angle = turn + (i * Math.PI) / 7;
      const reach = i % 2 === 0 ? 5 : 2.2;
      return at(cx + reach * Math.cos(angle), cy + reach * Math.sin(angle));
    });
    const [one, other] = [star(0, 0, 0.1), star(1.3, 0.7, 0.6)];
    const step = 0.02;
    let count = 0;
    for (let x = -6; x < 7; x += step) for (let y = -6; y < 7; y += step) if (isInside(at(x, y), one) && isInside(at(x, y), other)) count += 1;
    expect(Math.abs(overlapArea(one, other) / (count * step * step) - 1)).toBeLessThan(0.002);
  });
});

describe('what the plan measures', () => {
  const catchment = demoSite('tern-hollow').site.catchments[0]!;
  const pipe = demoSite('tern-hollow').system.parts.find(({ kind }) => kind === 'pipe')!;
  const document = drawn([
    shape('Z1', 'area', 'lawn', ell, catchment.id), shape('Z2', 'line', 'pipe', [at(0, 0), at(3, 4)], pipe.id), shape('Z3', 'area', 'lot', box(0, 0, 30, 20)),
    shape('Z4', 'area', 'bed', box(0, 0, 1, 1)), shape('Z5', 'place', 'tree', [at(1, 1)]), shape('Z6', 'line', 'pipe', [at(0, 0), at(3, 4)], 'gone'),
  ]);

  test('areas go to catchments and the lot, lengths to parts', () => {
    expect(planFigures(document).map(({ shape: id, path, drawn: value }) => [id, path.join('/'), value])).toEqual([
      ['Z1', `site/catchments/@${catchment.id}/area`, 12], ['Z2', `system/parts/@${pipe.id}/length`, 5], ['Z3', 'site/lotArea', 600],
    ]);
    expect(planFigures(document)[0]?.stated).toBe(catchment.area);
    expect(planFigures({ ...document, site: { ...document.site, plan: null } })).toEqual([]);
  });

  test('measures are rounded to what a hand draws', () => {
    expect(measureOf(shape('Z', 'line', 'pipe', [at(0, 0), at(1, 1)]))).toBeCloseTo(1.4142, 10);
    expect(measureOf(shape('Z', 'place', 'tree', [at(0, 0)]))).toBe(0);
  });

  test('a plan is part of a sound document', () => {
    expect(() => { checkDocument(document); }).not.toThrow();
  });

  test.each([
    ['an outline of two places', shape('Z1', 'area', 'lawn', [at(0, 0), at(1, 0)]), '/site/plan/shapes/0/points', 'document.tooFew'],
    ['a place with two', shape('Z1', 'place', 'tree', [at(0, 0), at(1, 0)]), '/site/plan/shapes/0/points', 'document.tooMany'],
    ['a lawn along a line', shape('Z1', 'line', 'lawn', [at(0, 0), at(1, 0)]), '/site/plan/shapes/0/use', 'document.wrongKind'],
    ['a coordinate that is no number', shape('Z1', 'line', 'wall', [at(0, 0), at(Number.NaN, 0)]), '/site/plan/shapes/0/points/1/x', 'document.notFinite'],
  ] as const)('refuses %s', (_, wrong, path, code) => {
    expect(() => { checkDocument(drawn([wrong])); }).toThrow(expect.objectContaining({ code, path }) as Error);
  });

  test('refuses a picture tied at one place, and a north beyond the circle', () => {
    const picture = { photo: 'p', width: 100, height: 100, tie: { from: at(1, 1), to: at(1, 1), length: 3 } };
    expect(() => { checkDocument(drawn([], picture)); }).toThrow(expect.objectContaining({ path: '/site/plan/picture/tie/to' }) as Error);
    const turned = drawn([]);
    expect(() => { checkDocument({ ...turned, site: { ...turned.site, plan: { ...turned.site.plan!, north: 361 } } }); }).toThrow(expect.objectContaining({ code: 'document.outOfRange' }) as Error);
  });
});

describe('what cannot be on a plan', () => {
  const [first, second] = demoSite('tern-hollow').site.catchments.map(({ id }) => id);
  const utility = demoSite('tern-hollow').site.utilities[0]!;
  const codes = (shapes: PlanShape[]): string[] => planChecks(drawn(shapes)).map(({ code, shapes: ids }) => `${code} ${ids.join(' ')}`);
  const house = shape('H', 'area', 'house', box(0, 0, 10, 8));

  test('a plan without faults is silent', () => {
    expect(codes([house, shape('W', 'line', 'wall', [at(12, 0), at(12, 9)]), shape('P', 'line', 'pipe', [at(10, 4), at(11, 4)]), shape('L', 'area', 'lot', box(-5, -5, 20, 20)),
      shape('A', 'area', 'lawn', box(10, 0, 14, 8), first), shape('B', 'area', 'bed', box(14, 0, 16, 8), second)])).toEqual([]);
  });

  test('an outline that crosses itself', () => {
    expect(codes([shape('A', 'area', 'lawn', [at(0, 0), at(4, 4), at(4, 0), at(0, 4)])])).toEqual(['plan.crossesItself A']);
  });

  test('walls that cross, and a wall into a house', () => {
    const one = shape('W', 'line', 'wall', [at(12, 0), at(12, 9)]);
    expect(codes([one, shape('V', 'line', 'wall', [at(11, 4), at(15, 4)])])).toEqual(['plan.wallsCross W V']);
    expect(codes([house, shape('V', 'line', 'wall', [at(9, 4), at(15, 4)])])).toEqual(['plan.wallsCross H V']);
  });

  test('a pipe through a footing, but not one that ends at the wall', () => {
    expect(codes([house, shape('P', 'line', 'pipe', [at(-2, 4), at(12, 4)])])).toEqual(['plan.throughHouse P H']);
    expect(codes([house, shape('P', 'line', 'pipe', [at(9.9, 4), at(12, 4)])])).toEqual([]);
  });

  test('a pipe within the hand-dig strip of a marked line, by the width that the utility has', () => {
    const mark = shape('U', 'line', 'utility', [at(0, 10), at(20, 10)], utility.id);
    expect(codes([mark, shape('P', 'line', 'pipe', [at(0, 10 - utility.tolerance - 0.01), at(20, 10 - utility.tolerance - 0.01)])])).toEqual([]);
    expect(codes([mark, shape('P', 'line', 'pipe', [at(0, 10 - utility.tolerance + 0.01), at(20, 5)])])).toEqual(['plan.inToleranceStrip P U']);
  });

  test('ground that two catchments count', () => {
    expect(codes([shape('A', 'area', 'lawn', box(0, 0, 10, 10), first), shape('B', 'area', 'bed', box(9, 0, 12, 10), second)])).toEqual(['plan.countedTwice A B']);
  });

  test('a run that leaves the lot, and a shape of something that is gone', () => {
    expect(codes([shape('L', 'area', 'lot', box(0, 0, 20, 20)), shape('P', 'line', 'pipe', [at(5, 5), at(25, 5)], 'gone')])).toEqual(['plan.outsideLot P', 'plan.tiedToNothing P']);
  });
});

describe('the ground of a plan', () => {
  test('spot levels with places, and the walls and houses that are drawn: a pit, volume by hand', () => {
    const document = demoSite('tern-hollow');
    const levels = [[0, 0, 1], [6, 0, 1], [6, 6, 1], [0, 6, 1], [3, 3, 0]] as const;
    const spotLevels = levels.map(([x, y, level], i) => ({ id: `S${i}`, name: `Shot ${i}`, level, station: null, position: at(x, y) }));
    const site = { ...document.site, spotLevels, breaklines: [], walls: [], plan: { picture: null, north: null, shapes: [shape('W', 'line', 'wall', [at(-1, 9), at(9, 9)])] } };
    const ground = triangulateSurvey(planGround(site));
    const { lowSpots } = findLowSpots(ground);
    // a pyramid of 6 x 6 and depth 1 upside down: a third of 36
    expect(lowSpots.map(({ topLevel, volume }) => [topLevel, Math.round(volume * 1e9) / 1e9])).toEqual([[1, 12]]);
    expect(planGround(site).walls.map(({ id }) => id)).toEqual(['W']);
    expect(planGround({ ...site, plan: { ...site.plan, shapes: [shape('H', 'area', 'house', box(8, 0, 12, 4))] } }).walls[0]?.points).toHaveLength(5);
  });
});
