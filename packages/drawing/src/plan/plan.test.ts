import type { DesignDocument, PlanShape, Position } from '@yardfall/calc';
import { contourLines, findLowSpots, flowArrows, planChecks, planFigures, planGround, triangulateSurvey, waterExtent } from '@yardfall/calc';
import { describe, expect, test } from 'vitest';
import { toSvg, toSvgString } from '../index.ts';
import { ternHollow } from '../testing/tern-hollow.ts';
import { addPoint, movePoint, moveShape, placeTowards, rectangle, removePoint, scalePlan, setSide, snap } from './edits.ts';
import { plan, type PlanGround } from './plan.ts';
import { fromPicture, pictureScale, planExtent, shownScale, toPicture, zoomed } from './view.ts';

const at = (x: number, y: number): Position => ({ x, y });
const shape = (id: string, kind: PlanShape['kind'], use: PlanShape['use'], points: Position[], of: string | null = null): PlanShape => ({ id, name: `Shape ${id}`, kind, use, points, of });
const lawn = shape('Z1', 'area', 'lawn', rectangle(at(0, 0), 8, 5));
const run = shape('Z2', 'line', 'pipe', [at(0, 0), at(3, 4), at(3, 10)]);

function drawnSite(shapes: PlanShape[]): DesignDocument {
  const levels = [[0, 0, 1], [6, 0, 1], [6, 6, 1], [0, 6, 1], [3, 3, 0]] as const;
  const spotLevels = levels.map(([x, y, level], i) => ({ id: `S${i}`, name: `Shot ${i}`, level, station: null, position: at(x, y) }));
  return { ...ternHollow, site: { ...ternHollow.site, spotLevels, plan: { picture: null, north: 30, shapes } } };
}

function groundOf(document: DesignDocument, level: number): PlanGround {
  const made = triangulateSurvey(planGround(document.site));
  const { lowSpots } = findLowSpots(made);
  return { contours: contourLines(made, 0.25), arrows: flowArrows(made), water: lowSpots.flatMap((spot) => waterExtent(made, spot, level)), lowSpots };
}

describe('edits of a shape, by hand', () => {
  test('corners move, come and go, but not below what a shape needs', () => {
    expect(movePoint(lawn, 1, at(9, 1)).points[1]).toEqual(at(9, 1));
    expect(addPoint(lawn, 0, at(4, -1)).points).toHaveLength(5);
    expect(addPoint(lawn, 0, at(4, -1)).points[1]).toEqual(at(4, -1));
    const triangle = removePoint(lawn, 3);
    expect(triangle?.points).toEqual([at(0, 0), at(8, 0), at(8, 5)]);
    expect(triangle && removePoint(triangle, 0)).toBeNull();
    expect(moveShape(run, at(1, -1)).points).toEqual([at(1, -1), at(4, 3), at(4, 9)]);
  });

  test('a typed side of a rectangle takes the opposite one along; of a line all that follows', () => {
    expect(setSide(lawn, 0, 10).points).toEqual([at(0, 0), at(10, 0), at(10, 5), at(0, 5)]);
    expect(setSide(lawn, 3, 2).points).toEqual([at(0, 3), at(8, 3), at(8, 5), at(0, 5)]);
    // 3-4-5: at 10 the next corner lies at (6, 8), and the last one 6 above it
    expect(setSide(run, 0, 10).points).toEqual([at(0, 0), at(6, 8), at(6, 14)]);
    expect(setSide({ ...lawn, points: [at(0, 0), at(8, 0), at(7, 5), at(0, 5)] }, 0, 10).points).toEqual([at(0, 0), at(10, 0), at(7, 5), at(0, 5)]);
    expect(() => setSide(lawn, 0, 0)).toThrow(RangeError);
  });

  test('places by length and direction', () => {
    expect(placeTowards(at(1, 1), 2, 0)).toEqual(at(1, 3));
    expect(placeTowards(at(1, 1), 2, 90).x).toBeCloseTo(3, 12);
    expect(placeTowards(at(1, 1), 2, 90).y).toBeCloseTo(1, 12);
  });

  test('snaps to a corner before a side before a right angle', () => {
    expect(snap(at(8.1, 5.1), [lawn], { reach: 0.3 })).toEqual({ at: at(8, 5), to: 'corner' });
    expect(snap(at(4, 0.2), [lawn], { reach: 0.3 })).toEqual({ at: at(4, 0), to: 'side' });
    expect(snap(at(20.1, 27), [lawn], { reach: 0.3, path: [at(12, 20), at(20, 20)] })).toEqual({ at: at(20, 27), to: 'square' });
    expect(snap(at(26, 20.2), [lawn], { reach: 0.3, path: [at(12, 20), at(20, 20)] })).toEqual({ at: at(26, 20), to: 'square' });
    expect(snap(at(26, 24), [lawn], { reach: 0.3, path: [at(12, 20), at(20, 20)] }).to).toBe('nothing');
    expect(snap(at(8.1, 5.1), [lawn], { reach: 0.3, without: 'Z1' }).to).toBe('nothing');
    expect(snap(at(12.1, 20), [], { reach: 0.3, path: [at(12, 20), at(20, 20), at(20, 25)] })).toEqual({ at: at(12, 20), to: 'corner' });
  });

  test('another known length makes everything larger by the same share', () => {
    const { shapes, spots } = scalePlan({ picture: null, north: null, shapes: [lawn] }, drawnSite([]).site.spotLevels, 1.5);
    expect(shapes[0]?.points[2]).toEqual(at(12, 7.5));
    expect(spots[4]?.position).toEqual(at(4.5, 4.5));
  });
});

describe('what the plan shows', () => {
  const picture = { photo: 'p', width: 1000, height: 800, tie: { from: at(100, 100), to: at(100, 600), length: 10 } };

  test('a picture tied to a known length: 10 m over 500 pixels', () => {
    expect(pictureScale(picture)).toBeCloseTo(0.02, 12);
    expect(pictureScale({ ...picture, tie: null })).toBeNull();
    expect(fromPicture(picture, 0.02, at(500, 800))).toEqual(at(10, 0));
    expect(toPicture(picture, 0.02, at(10, 0))).toEqual(at(500, 800));
    expect(shownScale({ ...picture, tie: null })).toBe(0.02);
  });

  test('one scale in both directions, everything in it; nearer about a place that stays', () => {
    const extent = planExtent(drawnSite([lawn, run]).site, 600, 300);
    expect((extent.x1 - extent.x0) / 600).toBeCloseTo((extent.y1 - extent.y0) / 300, 12);
    expect([extent.x0 < 0, extent.x1 > 8, extent.y0 < 0, extent.y1 > 10]).toEqual([true, true, true, true]);
    const near = zoomed(extent, 2, at(8, 5));
    expect(near.x1 - near.x0).toBeCloseTo((extent.x1 - extent.x0) / 2, 12);
    expect((8 - near.x0) / (near.x1 - near.x0)).toBeCloseTo((8 - extent.x0) / (extent.x1 - extent.x0), 12);
  });

  test('each shape with its measure, each level, the water, and a mark where something is wrong', () => {
    const [catchment] = ternHollow.site.catchments;
    const document = drawnSite([{ ...lawn, of: catchment?.id ?? '' }, { ...run, of: 'gone' }]);
    const ground = groundOf(document, 0.5);
    const display = plan(document, { width: 600, height: 400, ground, figures: planFigures(document), checks: planChecks(document) });
    const texts = display.items.flatMap((item) => (item.kind === 'text' ? [item] : []));
    expect(texts.find(({ part }) => part === 'Z1')?.label).toEqual({ code: 'drawing.plan.area', params: { name: 'Shape Z1', value: 40 } });
    expect(texts.filter(({ label }) => label.code === 'drawing.plan.lowest').map(({ label, at: place }) => [label.params['level'], place])).toEqual([[0, [3, 3]]]);
    expect(texts.some(({ label }) => label.code === 'drawing.plan.north')).toBe(true);
    expect(display.items.filter((item) => item.kind === 'mark' && item.mark === 'findingCaution').map((item) => item.kind === 'mark' && item.value)).toEqual(['plan.tiedToNothing']);
    // water half way up a pyramid of 6 x 6 upside down stands over 3 x 3
    const water = display.items.find((item) => item.kind === 'polygon' && item.hatch === 'water');
    const xs = water?.kind === 'polygon' ? water.points.map(([x]) => x) : [];
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([1.5, 4.5]);
    expect(display.hits.map(({ part }) => part)).toEqual(['Z1', 'Z2']);
    const svg = toSvgString(toSvg(display, { width: 600, height: 400, label: (code) => code, theme: 'print' }));
    expect(svg).toContain('data-hit="Z1"');
    expect(svg).not.toContain('NaN');
  });
});
