import { describe, expect, it } from 'vitest';
import { CUBIC_FOOT, FOOT, GALLON_PER_MINUTE, GRAVITY, INCH } from '../common/constants.ts';
import { orificeFlow } from '../inlet/orifice.ts';
import { circleSection } from '../pipe/circleSection.ts';
import { fixtureCsv, fixtureRow, given } from '../testing/fixtures.ts';
import { criticalDepth, criticalDepthInPipe } from './criticalDepth.ts';
import { entranceHead } from './entranceControl.ts';
import { outletDepth } from './outletDepth.ts';
import { depthAtStation, spatiallyVariedFlow } from './spatiallyVariedFlow.ts';

describe('critical depth', () => {
  it('column yc_outlet of the reference profiles', () => {
    for (const row of fixtureCsv('channel/lateralInflow.csv')) {
      const foot = row['units'] === 'US' ? FOOT : 1;
      const own = criticalDepth(Number(row['Q_total']) * foot * foot * foot, Number(row['B']) * foot) / foot;
      expect(Math.abs(own / Number(row['yc_outlet']) - 1)).toBeLessThan(2e-5);
    }
  });
  it('in a pipe Q^2*T = g*A^3, and a full pipe has none', () => {
    for (const flow of [1e-5, 1e-3, 4e-3, 8e-3]) {
      const { area, topWidth } = circleSection(0.1, criticalDepthInPipe(flow, 0.1) / 0.1);
      expect((flow * flow * topWidth) / (GRAVITY * area * area * area)).toBeCloseTo(1, 8);
    }
    expect(criticalDepthInPipe(0, 0.1)).toBe(0);
    expect(() => criticalDepth(NaN, 1)).toThrow('value.notFinite');
  });
});

describe('channel with inflow along its length', () => {
  const rows = fixtureCsv('channel/lateralInflow.csv');
  it('has ten reference profiles', () => expect(rows).toHaveLength(10));

  for (const row of rows) {
    it(`case ${row['case']}: width ${row['B']}, length ${row['L']}, flow ${row['Q_total']}, n ${row['manning_n']}, slope ${row['S0']}`, () => {
      const foot = row['units'] === 'US' ? FOOT : 1;
      const length = Number(row['L']) * foot;
      const channel = { width: Number(row['B']) * foot, length, slope: Number(row['S0']), roughness: Number(row['manning_n']) };
      const surface = spatiallyVariedFlow(channel, Number(row['Q_total']) * foot * foot * foot, null, 400);
      for (const [column, share] of [['y_x0', 0], ['y_x0.25L', 0.25], ['y_x0.50L', 0.5], ['y_x0.75L', 0.75], ['y_x0.90L', 0.9]] as const) {
        expect(Math.abs(depthAtStation(surface, share * length) / foot / Number(row[column]) - 1)).toBeLessThan(0.005);
      }
      expect(Math.abs(surface.depthMax / foot / Number(row['y_max']) - 1)).toBeLessThan(0.005);
      expect(Math.abs(surface.xOfDepthMax / length - Number(row['x_over_L_of_ymax']))).toBeLessThan(0.01);
    });
  }

  it('level, frictionless and free stands sqrt(3)*y_c, with the closed-form profile (rows 8.1, 8.2)', () => {
    for (const flow of [1e-5, 0.1 * CUBIC_FOOT, 0.02]) {
      const surface = spatiallyVariedFlow({ width: 4 * INCH, length: 20 * FOOT, slope: 0, roughness: 0 }, flow, null, 50);
      expect(Math.abs(surface.depthUpstream / (Math.sqrt(3) * surface.criticalDepth) - 1)).toBeLessThan(1e-6);
      for (const { x, depth } of surface.profile) {
        const r = depth / surface.criticalDepth;
        expect(Math.abs((x / (20 * FOOT)) * (x / (20 * FOOT)) - (3 * r - r * r * r) / 2)).toBeLessThan(1e-9);
      }
    }
  });

  it('the march has settled: 100 and 3200 steps agree to 0.05 %', () => {
    const channel = { width: 0.1, length: 5.5, slope: 0.004, roughness: 0.012 };
    const coarse = spatiallyVariedFlow(channel, 0.004, null);
    const fine = spatiallyVariedFlow(channel, 0.004, null, 3200);
    expect(Math.abs(coarse.depthUpstream / fine.depthUpstream - 1)).toBeLessThan(5e-4);
    expect(Math.abs(coarse.depthMax / fine.depthMax - 1)).toBeLessThan(5e-4);
  });

  it('a deeper end, more friction, more flow and less fall never lower the upper end', () => {
    const up = (change: Partial<{ width: number; length: number; slope: number; roughness: number }>, flow = 0.003, end: number | null = null): number =>
      spatiallyVariedFlow({ width: 0.1, length: 6, slope: 0, roughness: 0.01, ...change }, flow, end).depthUpstream;
    expect(up({}, 0.003, 0.1)).toBeGreaterThan(up({}));
    expect(up({ roughness: 0.014 })).toBeGreaterThan(up({}));
    expect(up({}, 0.004)).toBeGreaterThan(up({}));
    expect(up({ slope: 0.003 })).toBeLessThan(up({}));
    expect(up({}, 0.003, 0.01)).toBe(up({}));
  });

  it('a steep channel stands at critical depth where it would run faster', () => {
    const surface = spatiallyVariedFlow({ width: 0.1, length: 6, slope: 0.08, roughness: 0.01 }, 0.003, null);
    for (const { x, depth } of surface.profile) {
      expect(depth).toBeGreaterThanOrEqual(criticalDepth((0.003 * x) / 6, 0.1) * (1 - 1e-9));
      expect(Number.isFinite(depth)).toBe(true);
    }
  });

  it('without flow the water is level', () => {
    const surface = spatiallyVariedFlow({ width: 0.1, length: 6, slope: 0.01, roughness: 0.01 }, 0, 0.1);
    expect([surface.depthUpstream, surface.depthAtOutlet]).toEqual([0.1 - 0.06, 0.1]);
  });
});

describe('demo channel', () => {
  const FILE = 'channel/ternHollow.json';
  it('free frictionless ends, 4 and 5 in wide', () => {
    for (const id of ['free', 'free5']) {
      const row = fixtureRow(FILE, id);
      for (const [gpm, inches] of Object.entries(row.expected)) {
        const surface = spatiallyVariedFlow({ width: given(row, 'widthInches') * INCH, length: 5, slope: 0, roughness: 0 }, Number(gpm) * GALLON_PER_MINUTE, null);
        expect(Math.abs(surface.depthUpstream / INCH - inches)).toBeLessThan(row.tolerance);
      }
    }
  });

  it('with its 4 in end outlet it stands higher: about 4.2, 4.6 and 6.3 in', () => {
    const row = fixtureRow(FILE, 'outlet');
    const width = given(row, 'widthInches') * INCH;
    for (const [gpm, inches] of Object.entries(row.expected)) {
      const flow = Number(gpm) * GALLON_PER_MINUTE;
      const end = outletDepth(flow, width, given(row, 'outletInches') * INCH, null);
      const surface = spatiallyVariedFlow({ width, length: given(row, 'feet') * FOOT, slope: 0, roughness: given(row, 'n') }, flow, end.depth);
      expect(Math.abs(surface.depthUpstream / INCH - inches)).toBeLessThan(row.tolerance);
    }
  });

  it('orifice check C4: 53 gpm and 94 gpm under 3 in', () => {
    const row = fixtureRow(FILE, 'orifice');
    for (const [inches, gpm] of Object.entries(row.expected)) {
      const d = Number(inches) * INCH;
      const own = orificeFlow(given(row, 'c'), (Math.PI / 4) * d * d, given(row, 'headInches') * INCH) / GALLON_PER_MINUTE;
      expect(Math.abs(own - gpm)).toBeLessThan(row.tolerance);
    }
  });
});

describe('outlet of a channel', () => {
  const width = 4 * INCH;
  const diameter = 4 * INCH;
  it('needs more head for more flow, without a step', () => {
    let before = 0;
    for (let gpm = 1; gpm <= 150; gpm += 0.5) {
      const head = entranceHead(gpm * GALLON_PER_MINUTE, diameter);
      expect(head).toBeGreaterThan(before);
      if (gpm > 1) expect(head - before).toBeLessThan(0.006);
      before = head;
    }
  });

  it('goes from weir to entrance, and the energy of the answer is the head', () => {
    const low = outletDepth(20 * GALLON_PER_MINUTE, width, diameter, null);
    const high = outletDepth(110 * GALLON_PER_MINUTE, width, diameter, null);
    expect([low.control, high.control]).toEqual(['weir', 'entrance']);
    for (const [answer, gpm] of [[low, 20], [high, 110]] as const) {
      const v = (gpm * GALLON_PER_MINUTE) / (width * answer.depth);
      expect(answer.depth + (v * v) / (2 * GRAVITY)).toBeCloseTo(answer.head, 9);
    }
  });

  it('a flat or drowned pipe rules, a steep free one does not', () => {
    const flow = 58 * GALLON_PER_MINUTE;
    const pipe = { length: 4.3, slope: 1 / 96, roughness: 0.01, tailwater: 0 };
    expect(outletDepth(flow, width, diameter, pipe).control).not.toBe('pipe');
    const flat = outletDepth(flow, width, diameter, { ...pipe, slope: 0.001, length: 30 });
    expect(flat.control).toBe('pipe');
    const drowned = outletDepth(flow, width, diameter, { ...pipe, tailwater: 0.4 });
    expect(drowned.control).toBe('pipe');
    expect(drowned.head).toBeGreaterThan(0.4 - pipe.slope * pipe.length);
  });

  it('a middle outlet stands deeper than an end outlet of the same flow: less of its head is speed', () => {
    const flow = 67 * GALLON_PER_MINUTE;
    const end = outletDepth(flow, width, diameter, null);
    const middle = outletDepth(flow, width, diameter, null, flow / 2);
    expect(middle.head).toBe(end.head);
    expect(middle.depth).toBeGreaterThan(end.depth);
    expect(middle.depth).toBeLessThan(middle.head);
  });

  it('a wide outlet in a narrow channel leaves the end free', () => {
    const answer = outletDepth(30 * GALLON_PER_MINUTE, 0.05, 0.3, null);
    expect(answer.control).toBe('critical');
    expect(answer.depth).toBe(criticalDepth(30 * GALLON_PER_MINUTE, 0.05));
    expect(outletDepth(0, 0.1, 0.1, null).depth).toBe(0);
  });
});
