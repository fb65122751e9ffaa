import { describe, expect, test } from 'vitest';
import type { CheckValve, Pump } from '../document/document.ts';
import { changed, demoSite } from '../testing/sites.ts';
import { buildModel } from './buildModel.ts';
import type { LineStore } from './model.ts';

/** The demo yard's line (1.5 in) with pumps of straight curves, each behind a valve of its own; no weep holes. */
function lineWith(pumps: readonly { readonly shutOff: number; readonly most: number; readonly valve: number | null }[]): LineStore {
  const document = changed(demoSite('tern-hollow'), (copy) => {
    const pump = copy.system.parts.find(({ kind }) => kind === 'pump') as Pump;
    const valve = copy.system.parts.find(({ kind }) => kind === 'checkValve') as CheckValve;
    copy.system.parts = copy.system.parts.filter(({ kind }) => kind !== 'pump' && kind !== 'checkValve' && kind !== 'weepHole');
    pumps.forEach(({ shutOff, most, valve: length }, k) => {
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
});
