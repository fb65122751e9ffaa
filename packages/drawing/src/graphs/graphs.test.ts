import { describe, expect, test } from 'vitest';
import { put, roundStep, thin, ticks } from './axis.ts';
import { frontGraph, type FrontPoint } from './front-graph.ts';
import { pumpGraph } from './pump-graph.ts';
import { stageGraph, stageVolumes } from './stage-graph.ts';
import { stormGraph } from './storm-graph.ts';
import { projection } from '../svg/project.ts';
import { stormMargins } from './storm-plot.ts';
import { peakTime, waterAt, windowOf } from './storm-window.ts';
import { evaluation, stormRun } from '../testing/evaluation.ts';
import { lines, marks, only, outside, polygons, texts } from '../testing/read.ts';
import { ternHollow } from '../testing/tern-hollow.ts';
import { ft, gpm } from '../testing/units.ts';

describe('axes', () => {
  test('a step is 1, 2 or 5 and gives no more ticks than asked for', () => {
    for (const span of [0.003, 0.7, 9, 55, 1234]) {
      for (const most of [3, 5, 10]) {
        const step = roundStep(span, most);
        expect(span / step).toBeLessThanOrEqual(most);
        expect([1, 2, 5]).toContain(Math.round(Number(step.toExponential().split('e')[0])));
      }
    }
  });

  test('ticks reach both ends', () => {
    expect(ticks(-10, 20, 10)).toEqual([-10, 0, 10, 20]);
  });

  test('thinning keeps the highest and the lowest', () => {
    const wave = Array.from({ length: 5000 }, (_, index): [number, number] => [index, index === 3217 ? 9 : index === 4001 ? -9 : Math.sin(index)]);
    const kept = thin(wave, 100);
    expect(kept.length).toBeLessThanOrEqual(200);
    expect(Math.max(...kept.map(([, y]) => y))).toBe(9);
    expect(Math.min(...kept.map(([, y]) => y))).toBe(-9);
    expect(kept.every(([x], index) => index === 0 || x >= (kept[index - 1]?.[0] ?? 0))).toBe(true);
  });
});

describe('the storm graph', () => {
  const list = stormGraph(ternHollow, stormRun, { width: 1440, height: 420, cursor: peakTime(stormRun) });

  test('holds every item', () => {
    expect(outside(list)).toEqual([]);
    expect(outside(stormGraph(ternHollow, stormRun, { width: 390, height: 300 }))).toEqual([]);
  });

  test('hangs the rain from the top, the heaviest block about minute zero', () => {
    const bars = polygons(list, null).filter(({ outlined }) => outlined);
    const longest = bars.reduce((best, bar) => (Math.min(...bar.points.map(([, y]) => y)) < Math.min(...best.points.map(([, y]) => y)) ? bar : best));
    const across = longest.points.map(([x]) => x);
    expect((Math.min(...across) + Math.max(...across)) / 2).toBeCloseTo(0, 9);
    expect(new Set(bars.map((bar) => Math.max(...bar.points.map(([, y]) => y)))).size).toBe(1);
  });

  test('draws the sill above a pond that stays below it', () => {
    const sill = only(lines(list, 'S1')).points[0]?.[1] ?? 0;
    const highest = only(marks(list, 'levelMark')).at[1];
    expect(highest).toBeLessThan(sill);
    // Water 0.17 ft deep where the sill stands 0.31 ft over the low spot.
    const [base] = lines(list, null).filter(({ role, weight, points }) => role === 'water' && weight === 'bold' && points.length > 2).map(({ points }) => Math.min(...points.map(([, y]) => y))).sort((a, b) => b - a);
    expect((highest - (base ?? 0)) / (sill - (base ?? 0))).toBeCloseTo(0.17 / 0.31, 2);
  });

  test('reads the run at the cursor', () => {
    expect(only(texts(list, 'drawing.cursor')).label.params['level']).toBe(waterAt(stormRun, peakTime(stormRun)).pond);
  });

  test('its cursor stands where a slider with the same margins has the middle of its thumb, at every width', () => {
    const [from, to] = windowOf(stormRun);
    for (const width of [340, 358, 1090, 1376]) {
      for (const time of [from, from + 40 * stormRun.step, peakTime(stormRun), to]) {
        const drawn = stormGraph(ternHollow, stormRun, { width, height: 400, cursor: Math.round(time / stormRun.step) * stormRun.step });
        const cursor = only(texts(drawn, 'drawing.cursor')).at[0];
        const [x] = projection(drawn.extent, width, 400).toPixels([cursor, 0]);
        const share = (Math.round(time / stormRun.step) * stormRun.step - from) / (to - from);
        expect(x).toBeCloseTo(stormMargins.left + share * (width - stormMargins.left - stormMargins.right), 6);
      }
    }
  });

  test('begins and ends with a sample', () => {
    for (const time of windowOf(stormRun)) expect((time - stormRun.start) % stormRun.step).toBe(0);
  });

  test('has figures for rain, water and flow, each where its scale puts it', () => {
    for (const [width, height] of [[358, 360], [1376, 420]] as const) {
      const drawn = stormGraph(ternHollow, stormRun, { width, height });
      const figures = (code: string, unit: number): [number, number][] => texts(drawn, code).filter(({ side, at }) => side === 'left' && at[0] < 0).map(({ at, label: { params } }) => [Number(params['value']) / unit, at[1]]);
      const rain = figures('drawing.value.intensity', 0.0254 / 3600);
      expect(rain.length).toBeGreaterThan(1);
      expect(rain[0]?.[0]).toBe(0);
      for (const [value] of rain) expect(value).toBeCloseTo(Math.round(value), 6);
      const flow = figures('drawing.value.flow', gpm(1));
      expect(flow.length).toBeGreaterThan(1);
      // Water upward, rain downward.
      expect((flow[1]?.[1] ?? 0) - (flow[0]?.[1] ?? 0)).toBeGreaterThan(0);
      expect((rain[1]?.[1] ?? 0) - (rain[0]?.[1] ?? 0)).toBeLessThan(0);
      expect(figures('drawing.value.level', ft(1)).length).toBeGreaterThan(1);
    }
  });

  test('tells what flows in from the water by its line, and has no room for a basin that is not there', () => {
    const inflow = only(lines(list, null).filter(({ dash, points }) => dash === 'dash' && points.length > 2));
    expect(inflow.role).toBe('ink');
    expect(lines(list, null).filter(({ role, dash }) => role === 'water' && dash !== 'solid')).toEqual([]);
    const dry = stormGraph(ternHollow, { ...stormRun, basinLevel: [], pumpFlow: stormRun.pumpFlow.map(() => 0) }, { width: 1440, height: 420 });
    const base = (drawn: typeof list): number => only(texts(drawn, 'drawing.value.flow').filter(({ label: { params } }) => params['value'] === 0)).at[1] * 420;
    // Without a basin the flows stand right over the time axis.
    expect(base(dry) - 42).toBeLessThan(16);
    expect(base(list) - 42).toBeGreaterThan(40);
    expect(texts(dry, 'drawing.pumpFlow')).toEqual([]);
  });

  test('shows a start and a stop', () => {
    expect([texts(list, 'drawing.start').length, texts(list, 'drawing.stop').length]).toEqual([1, 1]);
  });

  test('its window holds the peak and lies in the run', () => {
    const [from, to] = windowOf(stormRun);
    expect(from).toBeLessThan(peakTime(stormRun));
    expect(to).toBeGreaterThan(peakTime(stormRun));
    expect(from).toBeGreaterThanOrEqual(stormRun.start);
    expect(to).toBeLessThanOrEqual(stormRun.start + 479 * stormRun.step);
  });
});

describe('the pump graph', () => {
  const pump = only(evaluation.results.pumps);
  const measured = { flow: gpm(30), uncertainty: gpm(1), head: ft(11.3) };
  const list = pumpGraph(pump, { measured });

  test('holds every item', () => {
    expect(outside(list)).toEqual([]);
  });

  test('marks both duty points where they are', () => {
    expect(marks(list, 'dutyPoint').map(({ at }) => at)).toEqual([[gpm(31), ft(11.3)], [gpm(32.5), ft(10.7)]]);
  });

  test('draws the line at start level lower by the difference in lift', () => {
    const [stop, start] = lines(list, 'D1');
    expect((stop?.points[0]?.[1] ?? 0) - (start?.points[0]?.[1] ?? 0)).toBeCloseTo(ft(0.9), 9);
  });

  test('draws other pumps thinner, by name, and makes room for the greatest', () => {
    const others = [{ name: 'Bigger', curve: [{ flow: 0, head: ft(40) }, { flow: gpm(60), head: ft(20) }, { flow: gpm(120), head: 0 }] }];
    const drawn = pumpGraph(pump, { others });
    expect(outside(drawn)).toEqual([]);
    const [curve] = lines(drawn, null).filter(({ dash }) => dash === 'longDash');
    expect([curve?.weight, curve?.points]).toEqual(['thin', others[0]?.curve.map(({ flow, head }) => [flow, head])]);
    expect(texts(drawn, 'drawing.value.name').map(({ label: { params } }) => params['value'])).toContain('Bigger');
    expect(drawn.extent.x1).toBeGreaterThan(gpm(120));
    expect(lines(list, null).filter(({ dash }) => dash === 'longDash')).toEqual([]);
  });

  test('shows the measured flow with its uncertainty', () => {
    const bar = lines(list, null).find(({ role, weight }) => role === 'sound' && weight === 'bold');
    expect(bar?.points).toEqual([[gpm(29), ft(11.3)], [gpm(31), ft(11.3)]]);
    expect(only(marks(list, 'measuredPoint')).at).toEqual([gpm(30), ft(11.3)]);
  });
});

describe('the line of price against protection', () => {
  const points: FrontPoint[] = [
    { id: 'a', cost: 400_000, lower: -0.02, passes: false, mark: null }, { id: 'b', cost: 520_000, lower: 0.03, passes: true, mark: 1 }, { id: 'c', cost: 900_000, lower: 0.06, passes: true, mark: 2 },
  ];

  test('is one line, every point pressable, the marks numbered', () => {
    for (const width of [358, 1000]) {
      const list = frontGraph(points, { width, height: 380 });
      expect(outside(list)).toEqual([]);
      expect(only(lines(list, null).filter(({ role, weight }) => role === 'water' && weight === 'bold')).points).toHaveLength(3);
      expect(list.hits.map(({ part }) => part)).toEqual(['a', 'b', 'c']);
      for (const { points: area } of list.hits) expect((area[1]?.[0] ?? 0) - (area[0]?.[0] ?? 0)).toBeGreaterThanOrEqual(24);
      expect(marks(list, 'dutyPoint').map(({ part }) => part)).toEqual(['b', 'c']);
    }
  });

  test('says no negative height: what lets water in lies below the sill line', () => {
    const list = frontGraph(points, { width: 1000, height: 380 });
    expect(texts(list, 'drawing.value.height').every(({ label: { params } }) => Number(params['value']) >= 0)).toBe(true);
    const sill = only(lines(list, null).filter(({ role }) => role === 'sill')).points[0]?.[1] ?? 0;
    const [wet, dry] = [marks(list, 'measuredPoint')[0]?.at[1] ?? sill, marks(list, 'dutyPoint')[0]?.at[1] ?? sill];
    expect([wet < sill, dry > sill]).toEqual([true, true]);
  });

  test('a single point, or points of one cost, still have axes', () => {
    expect(outside(frontGraph(points.slice(1, 2)))).toEqual([]);
    expect(outside(frontGraph(points.map((point) => ({ ...point, cost: 2 })), { cost: 'order' }))).toEqual([]);
  });
});

describe('the stage graph', () => {
  const spot = only(ternHollow.site.lowSpots);

  test('sums the volume by the frustum rule: about 650 gallons to the sill (invented example)', () => {
    const atSill = stageVolumes(spot.stageArea)[3];
    expect((atSill?.volume ?? 0) / 0.003785411784).toBeGreaterThan(640);
    expect((atSill?.volume ?? 0) / 0.003785411784).toBeLessThan(660);
  });

  test('holds every item and draws the sill at its level', () => {
    const list = stageGraph(ternHollow, spot);
    expect(outside(list)).toEqual([]);
    expect(only(lines(list, 'S1')).points[0]?.[1]).toBe(ft(99.93));
  });
});

test('a scale maps its ends to the ends of its band', () => {
  const scale = { low: 2, high: 4, from: 1, to: 0 };
  expect([put(scale, 2), put(scale, 3), put(scale, 4)]).toEqual([1, 0.5, 0]);
});
