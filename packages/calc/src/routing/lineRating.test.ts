import { describe, expect, test } from 'vitest';
import type { Basin, CheckValve, Pump, WeepHole } from '../document/document.ts';
import { changed, demoSite, type Changeable } from '../testing/sites.ts';
import { buildModel } from './buildModel.ts';
import { weepHoleFlow } from '../pump/weepHole.ts';
import { once, powerOfTwo } from './lineRating.ts';
import type { LineStore } from './model.ts';

interface Straight {
  readonly shutOff: number;
  readonly most: number;
  readonly valve: number | null;
  /** Diameter of its weep hole [m]. */
  readonly weep?: number;
}

/** The demo yard's line (1.5 in) with pumps of straight curves, each behind a valve of its own; no weep holes but those that are asked for. */
function lineWith(pumps: readonly Straight[]): LineStore {
  const document = changed(demoSite('tern-hollow'), (copy) => {
    const pump = copy.system.parts.find(({ kind }) => kind === 'pump') as Pump;
    const valve = copy.system.parts.find(({ kind }) => kind === 'checkValve') as CheckValve;
    const hole = copy.system.parts.find(({ kind }) => kind === 'weepHole') as WeepHole;
    copy.system.parts = copy.system.parts.filter(({ kind }) => kind !== 'pump' && kind !== 'checkValve' && kind !== 'weepHole');
    pumps.forEach(({ shutOff, most, valve: length, weep }, k) => {
      if (weep !== undefined) copy.system.parts.push({ ...hole, id: `W${k}`, pump: `M${k}`, diameter: weep });
      copy.system.parts.push({ ...pump, id: `M${k}`, drainsTo: `V${k}`, role: 'duty', curve: [{ flow: 0, head: shutOff }, { flow: most, head: 0 }] });
      copy.system.parts.push({ ...valve, id: `V${k}`, present: length !== null, equivalentLength: length ?? 0 });
    });
    const outlet = copy.system.parts.find((part) => part.kind === 'outlet' && part.id === 'O1');
    Object.assign(outlet!, { openingHead: 0 });
  });
  return buildModel(document).basins[0]!.lines[0]!;
}

const line = (() => {
  const part = demoSite('tern-hollow').system.parts.find(({ kind }) => kind === 'dischargeLine');
  if (part?.kind !== 'dischargeLine') throw new Error('no line');
  const length = part.length + part.fittings.reduce((sum, { count, equivalentLength }) => sum + count * equivalentLength, 0);
  return { length, diameter: part.innerDiameter, c: part.hazenWilliamsC };
})();

/** Hazen-Williams in SI, as in handbooks. */
const slope = (flow: number): number => (10.67 * flow ** 1.852) / (line.c ** 1.852 * line.diameter ** 4.8704);

function bisect(rising: (x: number) => number, low: number, high: number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 80; i += 1) {
    const middle = (a + b) / 2;
    if (rising(middle) < 0) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

/** Flow of straight curves side by side by two bisections: the head at which they meet, and each pump's flow at it. */
function byHand(pumps: readonly { readonly shutOff: number; readonly most: number; readonly valve: number }[], lift: number): number {
  const flowsAt = (head: number): number => pumps.reduce((sum, { shutOff, most, valve }) =>
    (head >= shutOff ? sum : sum + bisect((flow) => head - (shutOff * (1 - flow / most) - valve * slope(flow)), 0, most)), 0);
  const head = bisect((at) => at - lift - line.length * slope(flowsAt(at)), lift, lift + 20);
  return flowsAt(head);
}

describe('pumps side by side on one line', () => {
  const strong = { shutOff: 6, most: 0.003, valve: 2 };
  const other = { shutOff: 5, most: 0.002, valve: 5 };

  test.each([0.2, 0.6, 0.95])('give together what two bisections find %f of the way up the lifts of the yard', (share) => {
    const both = lineWith([strong, other]);
    const { bottom, top } = both.flow(3);
    const lift = bottom + share * (top - bottom);
    // 0.05 %: the rating goes in straight lines between 96 heads.
    expect(both.flow(3).flow(lift) / byHand([strong, other], lift)).toBeCloseTo(1, 3);
    expect(both.flow(1).flow(lift) / byHand([strong], lift)).toBeCloseTo(1, 3);
    expect(both.flow(2).flow(lift) / byHand([other], lift)).toBeCloseTo(1, 3);
  });

  test('fill an empty line by the harmonic mean of what they give to its quarters', () => {
    // A line that runs back wholly: filled to an eighth, three, five and seven of them, each with that share of its lift and its friction.
    const open = changed(demoSite('tern-hollow'), (copy) => {
      const valve = copy.system.parts.find(({ kind }) => kind === 'checkValve') as CheckValve;
      Object.assign(valve, { present: false });
      const pump = copy.system.parts.find(({ kind }) => kind === 'pump') as Pump;
      Object.assign(pump, { curve: [{ flow: 0, head: 6 }, { flow: 0.003, head: 0 }] });
      Object.assign(copy.system.parts.find((part) => part.kind === 'outlet' && part.id === 'O1')!, { openingHead: 0.1 });
      copy.system.parts = copy.system.parts.filter(({ kind }) => kind !== 'weepHole');
    });
    const filling = buildModel(open).basins[0]!.lines[0]!;
    const at = (filled: number, lift: number): number => bisect((flow) => filled * (lift + line.length * slope(flow) + 0.1) - 6 * (1 - flow / 0.003), 0, 0.003);
    for (const lift of [0.3, 0.8, 1.1]) {
      const time = [1, 3, 5, 7].reduce((sum, eighths) => sum + 1 / at(eighths / 8, lift), 0);
      expect(filling.filling(1).flow(lift) / (4 / time)).toBeCloseTo(1, 3);
      expect(filling.flow(1).flow(lift) / at(1, lift)).toBeCloseTo(1, 3);
    }
  });

  test('give back what their weep holes let through, each at its own head', () => {
    const weeping = changed(demoSite('tern-hollow'), (copy) => {
      const pump = copy.system.parts.find(({ kind }) => kind === 'pump') as Pump;
      Object.assign(pump, { curve: [{ flow: 0, head: 6 }, { flow: 0.003, head: 0 }] });
      Object.assign(copy.system.parts.find((part) => part.kind === 'outlet' && part.id === 'O1')!, { openingHead: 0 });
    });
    const valve = (weeping.system.parts.find(({ kind }) => kind === 'checkValve') as CheckValve).equivalentLength;
    const { flow } = buildModel(weeping).basins[0]!.lines[0]!;
    for (const lift of [0.3, 1.1]) {
      const gross = bisect((q) => lift + (line.length + valve) * slope(q) - 6 * (1 - q / 0.003), 0, 0.003);
      // Net of an orifice of 3/16 in under the head of the pump, see weepHole.
      expect(flow(1).flow(lift) / (gross - weepHoleFlow(0.004762, 6 * (1 - gross / 0.003)))).toBeCloseTo(1, 3);
    }
    const pair = lineWith([strong, strong]);
    for (const lift of [0.3, 1.1]) expect(pair.flow(3).flow(lift) / byHand([strong, strong], lift)).toBeCloseTo(1, 3);
  });

  test('on one valve and one line give together what one of twice the flow gives', () => {
    const shared = (count: number): LineStore => buildModel(changed(demoSite('tern-hollow'), (copy) => {
      const pump = copy.system.parts.find(({ kind }) => kind === 'pump') as Pump;
      const factor = count === 1 ? 2 : 1;
      Object.assign(pump, { curve: [{ flow: 0, head: 6 }, { flow: 0.0015 * factor, head: 0 }] });
      copy.system.parts = copy.system.parts.filter(({ kind }) => kind !== 'weepHole');
      for (let k = 1; k < count; k += 1) copy.system.parts.push({ ...pump, id: `M${k + 1}` } as (typeof copy.system.parts)[number]);
    })).basins[0]!.lines[0]!;
    const [one, two, six] = [shared(1), shared(2), shared(6)];
    for (const lift of [-0.2, 0.4, 1.1]) {
      expect(two.flow(3).flow(lift) / one.flow(1).flow(lift)).toBeCloseTo(1, 3);
      expect(two.flow(1)).toBe(two.flow(1));
      // Six of a kind: every set of as many gives as much.
      expect(six.flow(21).flow(lift)).toBeCloseTo(six.flow(7).flow(lift), 12);
      expect(six.flow(63).flow(lift)).toBeGreaterThanOrEqual(six.flow(31).flow(lift));
    }
  });

  test('are told by powers of two', () => {
    expect([0, 1, 2, 10].map(powerOfTwo)).toEqual([1, 2, 4, 1024]);
    let made = 0;
    const table = once((mask) => { made += mask; return two.flow(mask); });
    const two = lineWith([strong, other]);
    expect([table(1), table(1), table(2)]).toEqual([two.flow(1), two.flow(1), two.flow(2)]);
    expect(made).toBe(3);
  });

  test('give the last flow of their sheets where the line asks for less, and nothing over their shut-off head', () => {
    const weak = lineWith([{ shutOff: 1, most: 0.0004, valve: 0 }]);
    const { bottom, top } = weak.flow(1);
    expect(bottom).toBeLessThan(-0.5);
    expect(weak.flow(1).flow(bottom)).toBeCloseTo(0.0004, 9);
    expect(weak.flow(1).flow(top)).toBe(0);
    const pair = lineWith([{ shutOff: 1, most: 0.0004, valve: 0 }, { shutOff: 0.9, most: 0.0003, valve: 1 }]);
    expect(pair.flow(3).flow(bottom)).toBeCloseTo(0.0007, 6);
    expect(pair.flow(3).flow(top)).toBe(0);
    expect(pair.filling(3).flow(top)).toBe(0);
  });

  test('never give less than one of them alone, whatever the valve of the other takes', () => {
    const weak = { shutOff: 4, most: 0.0008, valve: 20 };
    const dead = { shutOff: 0.5, most: 0.0008, valve: 20 };
    const both = lineWith([{ shutOff: 6, most: 0.003, valve: null }, weak]);
    const { bottom, top } = both.flow(3);
    for (let i = 0; i <= 50; i += 1) {
      const lift = bottom + (i / 50) * (top - bottom);
      expect(both.flow(3).flow(lift)).toBeGreaterThanOrEqual(both.flow(1).flow(lift));
      expect(both.flow(3).flow(lift)).toBeGreaterThanOrEqual(both.flow(2).flow(lift));
      expect(both.filling(3).flow(lift)).toBeGreaterThanOrEqual(both.filling(1).flow(lift));
    }
    // Where the line asks for more than its shut-off head a pump stands behind its valve.
    const behind = lineWith([{ shutOff: 6, most: 0.003, valve: null }, dead]);
    expect(behind.flow(3).flow(top)).toBeCloseTo(behind.flow(1).flow(top), 6);
  });

  test('begin to give just under their shut-off head, one by itself and two of a kind', () => {
    const { bottom, top } = lineWith([strong]).flow(1);
    // A head of the rating, two fifths of a hundred-and-sixtieth of the curve under the shut-off head.
    const lift = bottom + (80 * (top - bottom)) / 96;
    const weak = { shutOff: lift / (1 - 0.4 / 160), most: 0.0004, valve: 0 };
    expect(lineWith([weak]).flow(1).flow(lift) / byHand([weak], lift)).toBeCloseTo(1, 2);
    expect(lineWith([weak, weak]).flow(3).flow(lift) / byHand([weak, weak], lift)).toBeCloseTo(1, 2);
    // Where the first has gone down its curve by one part of it, the other by half of one.
    const first = { ...weak, shutOff: lift / (1 - 1 / 160) };
    const second = { ...weak, shutOff: first.shutOff * (1 - 0.5 / 160) };
    expect(lineWith([first, second]).flow(3).flow(lift) / byHand([first, second], lift)).toBeCloseTo(1, 1);
  });

  test('fill what a sag does not keep: half of the line in four parts', () => {
    const halved = changed(demoSite('tern-hollow'), (copy) => {
      Object.assign(copy.system.parts.find(({ kind }) => kind === 'checkValve')!, { present: false });
      Object.assign(copy.system.parts.find(({ kind }) => kind === 'pump')!, { curve: [{ flow: 0, head: 6 }, { flow: 0.003, head: 0 }] });
      Object.assign(copy.system.parts.find((part) => part.kind === 'outlet' && part.id === 'O1')!, { openingHead: 0 });
      copy.system.parts = copy.system.parts.filter(({ kind }) => kind !== 'weepHole');
      const basin = copy.system.parts.find((part): part is Changeable<Basin> => part.kind === 'basin')!;
      Object.assign(copy.system.parts.find(({ kind }) => kind === 'dischargeLine')!, { lowestSag: 0.5 * (basin.offLevel + buildModel(demoSite('tern-hollow')).basins[0]!.lines[0]!.liftLevel) });
    });
    const filling = buildModel(halved).basins[0]!.lines[0]!;
    expect(filling.runBack / filling.volume).toBeCloseTo(0.5, 9);
    const at = (filled: number, lift: number): number => bisect((flow) => filled * (lift + line.length * slope(flow)) - 6 * (1 - flow / 0.003), 0, 0.003);
    for (const lift of [0.3, 1.1]) {
      const time = [9, 11, 13, 15].reduce((sum, sixteenths) => sum + 1 / at(sixteenths / 16, lift), 0);
      expect(filling.filling(1).flow(lift) / (4 / time)).toBeCloseTo(1, 3);
    }
  });
});

describe('a pump that only takes room in the line', () => {
  const strong = { shutOff: 6, most: 0.003, valve: 2 };
  /** All that it gives goes back through its wide weep hole, but on its way it costs the others head. */
  const idle = { shutOff: 6, most: 0.0004, valve: 2, weep: 0.012 };
  const least = (line: LineStore, more: number, fewer: number): number => {
    const { bottom, top } = line.flow(more);
    return Array.from({ length: 97 }, (_, i) => bottom + (i * (top - bottom)) / 96).reduce((low, lift) => Math.min(low, line.flow(more).flow(lift) - line.flow(fewer).flow(lift)), Infinity);
  };

  test('stays behind its valve: two and four pumps give no less than they do without it', () => {
    expect(least(lineWith([strong, idle]), 3, 1)).toBe(0);
    expect(least(lineWith([idle, strong]), 3, 2)).toBe(0);
    for (const place of [0, 1, 2, 3]) {
      const four = lineWith([0, 1, 2, 3].map((k) => (k === place ? idle : strong)));
      expect(least(four, 15, 15 - powerOfTwo(place))).toBeGreaterThanOrEqual(0);
    }
  });

  test('of five pumps is noticed where it is the last, and nowhere else', () => {
    const five = (place: number): LineStore => lineWith([0, 1, 2, 3, 4].map((k) => (k === place ? idle : strong)));
    expect(least(five(4), 31, 15)).toBeGreaterThanOrEqual(0);
    expect(least(five(3), 31, 23)).toBeLessThan(0);
  });
});
