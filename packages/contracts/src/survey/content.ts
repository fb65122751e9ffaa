import type { PlanPin, SurveyBase } from '../surveyFacts.ts';
import type { SurveyContent } from '../surveys.ts';
import type { FoldedEntry, SurveyEntry, SurveyValues } from './fold.ts';
import type { SurveyEntryKind } from './keys.ts';

export type PlainEntry = { [K in SurveyEntryKind]: { readonly key: string; readonly kind: K; readonly value: SurveyValues[K] } }[SurveyEntryKind];

const bare = { pin: null, photoIds: [] };
/** Until a bench mark is recorded: the finished floor at 100.00 ft, as the trade does (common practice, no source). */
const noBenchMark = { name: 'BM', level: 30.48 };

/** A survey that was stored as a whole, as entries; the second thing of one name has the key `<kind>:<name>#2`. */
export function baseEntries({ name, content }: SurveyBase): readonly PlainEntry[] {
  const { levelBook, points, stageArea, drainTests, observations, pins = [] } = content;
  const pinOf = lastReadings(levelBook.readings, pins);
  const keys = new Set<string>();
  const free = (key: string): string => {
    let at = key;
    for (let n = 2; keys.has(at); n += 1) at = `${key}#${String(n)}`;
    keys.add(at);
    return at;
  };
  return [
    ...(name === '' ? [] : [{ key: 'survey', kind: 'begun' as const, value: { name } }]),
    { key: 'benchMark', kind: 'benchMark', value: levelBook.benchMark },
    { key: 'mode', kind: 'mode', value: levelBook.mode },
    ...levelBook.readings.map((reading, index) => ({ key: free(`reading:${reading.id}`), kind: 'reading' as const, value: { ...reading, place: index + 1, ...bare, pin: pinOf.get(index) ?? null } })),
    ...points.map((point) => ({ key: free(`point:${point.point}`), kind: 'point' as const, value: point })),
    ...(stageArea.length === 0 ? [] : [{ key: 'stageArea', kind: 'stageArea' as const, value: stageArea }]),
    ...drainTests.map((test) => ({ key: free(`drainTest:${test.id}`), kind: 'drainTest' as const, value: { ...test, ...bare } })),
    ...observations.map((seen) => ({ key: free(`observation:${seen.id}`), kind: 'observation' as const, value: { ...seen, ...bare } })),
  ];
}

/** The pins of a stored survey, each at the last reading of its point. */
function lastReadings(readings: SurveyContent['levelBook']['readings'], pins: NonNullable<SurveyContent['pins']>): ReadonlyMap<number, PlanPin> {
  return new Map(pins.map(({ point, x, y }) => [readings.findLastIndex((reading) => reading.point === point), { x, y }]));
}

/** Where each point stands that was pinned: the last pin of a point counts, in the order of the book. */
function pinsOf(readings: readonly SurveyValues['reading'][]): NonNullable<SurveyContent['pins']> {
  const pins = new Map(readings.flatMap(({ point, pin }) => (pin === null ? [] : [[point, { point, x: pin.x, y: pin.y }] as const])));
  return [...pins.values()];
}

/** What stands, in the form that is reduced, hashed and designed from: without photos and the diagnosis. */
export function contentOf(standing: readonly FoldedEntry[]): SurveyContent {
  const all = <K extends SurveyEntryKind>(kind: K): readonly SurveyValues[K][] => standing.filter((entry): entry is SurveyEntry<K> & FoldedEntry => entry.kind === kind).map(({ value }) => value);
  const pins = pinsOf(all('reading'));
  return {
    levelBook: {
      mode: all('mode')[0] ?? 'heightOfInstrument',
      benchMark: all('benchMark')[0] ?? noBenchMark,
      readings: all('reading').map(({ id, point, backsight, intermediate, foresight, direct, note }) => ({ id, point, backsight, intermediate, foresight, direct, note })),
    },
    points: [...all('point')],
    stageArea: all('stageArea')[0] ?? [],
    drainTests: all('drainTest').map(({ pin: _pin, photoIds: _photoIds, ...test }) => test),
    observations: all('observation').map(({ pin: _pin, photoIds: _photoIds, ...seen }) => seen),
    ...(pins.length === 0 ? {} : { pins }),
  };
}
