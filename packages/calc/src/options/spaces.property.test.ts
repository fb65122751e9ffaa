import { describe, expect, test, vi } from 'vitest';
import { FOOT, GALLON_PER_MINUTE, INCH } from '../common/constants.ts';
import type { DesignDocument, Part } from '../document/document.ts';
import { seededRandom } from '../math/random.ts';
import { bruteForce } from '../testing/bruteForce.ts';
import { demoSite, siteDocument } from '../testing/sites.ts';
import { diversionChoice, pumpChoice, sizeChoice, type Choice, type ChoiceKind, type CostIndex } from './choices.ts';
import { mergeOptions, optionsFront } from './front.ts';
import { optionsSlice, type OptionsSlice } from './search.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 600_000 });

const hollow = demoSite('tern-hollow');
const sized = (kind: ChoiceKind, part: string, field: string, unit: number, sizes: readonly number[]): Choice =>
  sizeChoice(kind, part, sizes.map((size) => ({ id: `${size}`, name: `${size}`, fields: { [field]: size * unit } })));
const curve = (...points: readonly (readonly [gpm: number, feet: number])[]) => points.map(([gpm, feet]) => ({ flow: gpm * GALLON_PER_MINUTE, head: feet * FOOT }));
// Pump curves A and C of the bench (invented).
const pumps = pumpChoice('M1', [
  { name: 'A', solids: 0.0127, curve: curve([0, 18], [19, 15], [34, 10], [43, 5], [50, 0.5]) },
  { name: 'C', solids: 0.0127, curve: curve([0, 30], [32, 25], [50, 20], [62, 15], [72, 10], [80, 5], [86, 0.5]) },
]);
const duty = hollow.system.parts.find((part) => part.kind === 'pump')!;
const battery: Part = { ...duty, id: 'M2', role: 'standby', power: 'battery', energy: 2e6, inputPower: 300 };
const backup: Choice = { id: 'backup', kind: 'backup', alternatives: [{ id: 'none', name: 'none' }, { id: 'battery', name: 'battery', add: [battery] }] };
const gutter = diversionChoice(hollow, 'G1')!;
const channel = sized('collector', 'CH1', 'length', FOOT, [10, 18]);
const pipe = sized('pipe', 'P1', 'diameter', INCH, [3, 4]);
const basin = sized('basin', 'B1', 'diameter', INCH, [24, 30]);
const lines = sized('line', 'N1', 'innerDiameter', INCH, [1.38, 1.61, 2.07]);
const outlet = sized('outlet', 'O1', 'waterLevel', FOOT, [100.2, 99.8]);

/** Prices as they come: dearer is not better, and some are equal. */
function prices(choices: readonly Choice[], seed: number): CostIndex {
  const random = seededRandom(seed);
  return { base: 50, alternatives: Object.fromEntries(choices.map(({ id, alternatives }) => [id, Object.fromEntries(alternatives.map((item) => [item.id, Math.floor(12 * random())]))])) };
}

const withParts = (document: DesignDocument, change: (part: Part) => Part): DesignDocument => ({ ...document, system: { ...document.system, parts: document.system.parts.map(change) } });

const spaces: Readonly<Record<string, readonly [document: DesignDocument, choices: readonly Choice[]]>> = {
  'roof, pump and line': [hollow, [gutter, pumps, lines]],
  'outlet of the line, line and channel': [hollow, [outlet, lines, channel]],
  'backup, pump and outlet': [hollow, [backup, outlet, pumps]],
  'pipe, basin, roof and line': [hollow, [pipe, basin, gutter, lines]],
  // A line without its check valve, and one whose water comes back: stronger pumps are not better without question, so nothing is bounded by them.
  'line that runs back': [withParts(hollow, (part) => (part.kind === 'checkValve' ? { ...part, present: false } : part)), [pumps, lines, gutter]],
  'outlet that returns': [withParts(hollow, (part) => (part.id === 'O1' && part.kind === 'outlet' ? { ...part, returns: { lowSpot: 'L1', share: 0.4 } } : part)), [pumps, lines, gutter]],
  // Limits of the company: a freeboard of three inches and a half, and slower lines.
  'limits of the company': [{
    ...hollow, limits: [
      { limit: 'L5', pass: 0.12, fail: 0.05, by: 'M. Owner', at: '2026-03-01', why: 'low doors' },
      { limit: 'P4Fast', pass: 1.5, fail: 2, by: 'M. Owner', at: '2026-03-01', why: 'noise' },
    ],
  }, [pumps, lines]],
  'gravity alone': [siteDocument('kestrel-pool'), []],
};

describe('the search gives the front of every combination measured by itself, with the same reasons', () => {
  test.each(Object.entries(spaces))('%s', (_, [document, given]) => {
    const choices = given.length > 0 ? given : gravityChoices(document);
    let least = Infinity;
    for (const seed of [1, 2, 3, 4]) {
      const cost = prices(choices, seed);
      const slice = (index: number): OptionsSlice => optionsSlice(document, choices, cost, { slice: { index, of: 3 } });
      const brute = bruteForce(document, choices, cost);
      const found = seed % 2 === 0 ? mergeOptions(document, choices, cost, [0, 1, 2].map(slice)) : optionsFront(document, choices, cost);
      expect(found.points).toEqual(brute);
      least = Math.min(least, brute.length);
    }
    expect(least).toBeGreaterThan(0);
  });
});

function gravityChoices(document: DesignDocument): Choice[] {
  const ids = (kind: Part['kind']): string[] => document.system.parts.filter((part) => part.kind === kind).map(({ id }) => id);
  return [sized('pipe', ids('pipe')[0]!, 'diameter', INCH, [4, 6]), sized('pipe', ids('pipe')[1]!, 'diameter', INCH, [4, 6]), sized('collector', ids('channel')[0]!, 'length', FOOT, [8, 12])];
}
