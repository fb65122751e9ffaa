import { describe, expect, test, vi } from 'vitest';
import { evaluate } from '../evaluate/evaluate.ts';
import type { DesignDocument } from '../document/document.ts';
import type { Evaluation, Working } from '../results/results.ts';
import { numbersOf, pointed } from '../testing/pointers.ts';
import { namesIn, recompute } from '../testing/recompute.ts';
import { changed, everySite, siteDocument } from '../testing/sites.ts';
import { workingCodes, workingMeanings } from './codes.ts';

// A busy machine is slow; what is asserted here is never a time.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const off = (own: number, told: number): number => Math.abs(own - told) / Math.max(Math.abs(told), 1e-9);

/** Numbers of the results that say what was asked, and runs of samples behind the drawings. */
const withoutWorking: readonly (readonly [RegExp, string])[] = [
  [/\/returnPeriod$/, 'the return period that was asked for'],
  [/^\/results\/pumps\/\d+\/dutyAt(Off|On)\/basinLevel$/, 'a level of the document'],
  [/^\/results\/pumps\/\d+\/(systemCurve|pumpCurve)\//, 'samples for the pump graph'],
  [/^\/results\/channels\/\d+\/profile\//, 'samples for the section'],
  [/^\/results\/storm\/(start|step|intensity|inflow|pumpFlow|pondLevel|basinLevel|events)\b/, 'the storm graph'],
  [/^\/results\/recorded\/(step$|levels\/\d+\/levels\/|events\/)/, 'the picture of a measured storm'],
  [/^\/results\/family\/\d+\/(start|step|levels)\b/, 'the slider\'s picture'],
  [/^\/results\/whatIfs\/\d+\/outage\/0$/, 'the worst start, found by trial of every start'],
  [/^\/results\/band\/samples$/, 'the number of draws, a setting'],
  [/^\/results\/protection\/(openShare|outage)$/, 'what was asked for'],
  [/^\/results\/protection\/\w+\/failsAt$/, 'a storm of the table'],
  [/^\/results\/outage\/cases\/\d+\/duration$/, 'the length that was asked for'],
];

/** Every demo site, and one with a storm that was measured. */
const documents: readonly (readonly [string, DesignDocument])[] = [
  ...everySite.map((name) => [name, siteDocument(name)] as const),
  ['tern-hollow with a measured storm', changed(siteDocument('tern-hollow'), (copy) => {
    copy.rain.recorded = { name: 'Shower of our own', source: 'Invented', step: 300, depths: [1, 4, 9, 15, 12, 6, 3, 1, 0, 0, 0, 0] };
  })],
];

describe.each(documents)('workings of %s', (_, document) => {
  const evaluation: Evaluation = evaluate(document);

  test('each gives its value again from its own symbols', () => {
    const wrong = evaluation.workings.flatMap((item) => {
      const { value, wrongSteps } = recompute(item);
      const right = off(value, item.value) <= item.tolerance || Math.abs(value - item.value) < 1e-12;
      return right && wrongSteps.length === 0 ? [] : [`${item.result}: ${item.formula} gives ${value}, told ${item.value}; ${wrongSteps.join('; ')}`];
    });
    expect(wrong).toEqual([]);
  });

  test('each names every symbol of its formula and uses every symbol that it names', () => {
    const wrong = evaluation.workings.flatMap((item: Working) => {
      const known = new Set([...item.symbols, ...item.steps].map(({ symbol }) => symbol));
      const used = new Set([...namesIn(item.formula.split(' = ')[1] ?? ''), ...item.steps.flatMap(({ formula }) => namesIn(formula))]);
      if (item.solves !== null) used.add(item.formula.split(' = ')[0] ?? '');
      const missing = [...used].filter((symbol) => !known.has(symbol));
      const idle = item.symbols.map(({ symbol }) => symbol).filter((symbol) => !used.has(symbol));
      return missing.length + idle.length === 0 ? [] : [`${item.result}: ${item.formula} lacks ${missing.join(' ')}, does not use ${idle.join(' ')}`];
    });
    expect(wrong).toEqual([]);
  });

  test('each value stands in the results, and each symbol where it says that it came from', () => {
    const wrong = evaluation.workings.flatMap(({ result, value, symbols }) => [
      ...(pointed(evaluation, result) === value ? [] : [`${result} is not ${value}`]),
      ...symbols.flatMap(({ symbol, from }) => {
        if (from === null) return [];
        const origin: unknown = from.startsWith('/results/') ? pointed(evaluation, from) : pointed(document, from);
        return origin === undefined ? [`${result}: ${symbol} points to ${from}, where nothing is`] : [];
      }),
    ]);
    expect(wrong).toEqual([]);
  });

  test('a number of the results has a working, or says what was asked, or is a sample', () => {
    const explained = new Set(evaluation.workings.map(({ result }) => result));
    const bare = numbersOf(evaluation.results, '/results').map(({ path }) => path)
      .filter((path) => !explained.has(path) && !withoutWorking.some(([pattern]) => pattern.test(path)));
    expect(bare).toEqual([]);
  });

  test('every name has its words', () => {
    const codes = new Set<string>(workingCodes);
    const meanings = new Set<string>(workingMeanings);
    expect(evaluation.workings.map(({ code }) => code).filter((code) => !codes.has(code))).toEqual([]);
    expect(evaluation.workings.flatMap(({ symbols, steps }) => [...symbols, ...steps].map(({ meaning }) => meaning)).filter((meaning) => !meanings.has(meaning))).toEqual([]);
  });

  test('no result is worked twice', () => {
    expect(new Set(evaluation.workings.map(({ result }) => result)).size).toBe(evaluation.workings.length);
  });
});

describe('the calculator of these tests', () => {
  test('notices a value that does not follow from its symbols', () => {
    const [first] = evaluate(siteDocument('ridgeback'), { band: false }).workings;
    const told = { ...first!, symbols: first!.symbols.map((one, index) => (index === 0 ? { ...one, value: one.value + 1 } : one)) };
    expect(off(recompute(first!).value, first!.value)).toBeLessThanOrEqual(first!.tolerance);
    expect(off(recompute(told).value, told.value)).toBeGreaterThan(told.tolerance);
  });

  const drains = [
    { method: 'interceptor', conductivity: 2e-5, fromTexture: false, gradient: 0.05, depth: 0.9 },
    { method: 'relief', conductivity: 2e-5, fromTexture: false, waterAbove: 0.6, barrierBelow: 1.2, reach: 6, sides: 2 },
    null,
  ] as const;

  test.each(drains)('follows the ground water of an underdrain: %o', (seepage) => {
    const document = changed(siteDocument('ridgeback'), (copy) => {
      copy.system.parts.push({ kind: 'underdrain', id: 'U9', name: 'Drain along the wall', drainsTo: 'P1', diameter: 0.1, length: 12, invertUp: 30.3, invertDown: 30.26, inflowPerLength: 2e-6, seepage });
    });
    const sheet = evaluate(document, { band: false }).workings.find(({ code }) => code === 'underdrains.inflow');
    expect(sheet!.value).toBeGreaterThan(0);
    expect(recompute(sheet!)).toEqual({ value: expect.closeTo(sheet!.value, 12) as number, wrongSteps: [] });
  });
});
