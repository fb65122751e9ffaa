import { describe, expect, test } from 'vitest';
import { SurveyFact } from '../surveyFacts.ts';
import { SurveyContent } from '../surveys.ts';
import { differences } from './differences.ts';
import { foldSurvey, type JudgedSurveyFact } from './fold.ts';
import { benchMark, book, id, reading, recorded, struck } from './testing.ts';

const keys = (facts: readonly JudgedSurveyFact[]) => foldSurvey(facts, null);

describe('a survey born in the field', () => {
  test('has the name, the bench mark and the readings that were recorded, in the order of the book', () => {
    const facts = [recorded(1, 'begun', 'survey', { name: 'Visit' }), benchMark(2, 30.48), reading(3, 1, 1.2), reading(4, 2, 1.5), reading(5, 1.5, 1.4)];
    const { name, content, disputed } = keys(facts);
    expect(name).toBe('Visit');
    expect(content.levelBook.benchMark).toEqual({ name: 'Floor', level: 30.48 });
    expect(content.levelBook.readings.map(({ intermediate }) => intermediate)).toEqual([1.2, 1.4, 1.5]);
    expect(disputed).toEqual([]);
    expect(SurveyContent.safeParse(content).success).toBe(true);
  });
  test('before anything is recorded is a book that can be read', () => {
    expect(SurveyContent.safeParse(keys([]).content).success).toBe(true);
  });
  test('keeps pins and photos beside the book and not in it', () => {
    const pinned = { ...reading(3, 1, 1.2), fact: { ...reading(3, 1, 1.2).fact, value: { ...book(3, 1, 1.2), pin: { x: 1, y: 2 }, photoIds: [id(50)] } } } as JudgedSurveyFact;
    const { entries, content } = keys([pinned]);
    expect(entries[0]?.value).toMatchObject({ pin: { x: 1, y: 2 }, photoIds: [id(50)] });
    expect(content.levelBook.readings[0]).not.toHaveProperty('pin');
  });
  test('says where its points stand on the plan: the last pin of a point, and nothing at all where none is', () => {
    const pin = (n: number, at: { x: number; y: number } | null, point = 'Rim') => recorded(n, 'reading', `reading:${id(n)}`, { ...book(n, n, 1.2), point, pin: at });
    const pinned = keys([pin(3, { x: 1, y: 2 }), pin(4, { x: 3, y: 4 }), pin(5, null), pin(6, null, 'Sill'), pin(7, { x: 5, y: 6 }, 'Lawn')]);
    expect(pinned.content.pins).toEqual([{ point: 'Rim', x: 3, y: 4 }, { point: 'Lawn', x: 5, y: 6 }]);
    expect(SurveyContent.safeParse(pinned.content).success).toBe(true);
    expect(keys([pin(3, null)]).content).not.toHaveProperty('pins');
    const typed = foldSurvey([], { name: 'Typed', content: pinned.content });
    expect(typed.content).toEqual(pinned.content);
    expect(differences(pinned, { name: '', content: pinned.content })).toEqual([]);
  });
});

describe('a struck reading', () => {
  const facts = [reading(3, 1, 1.2), struck(4, `reading:${id(3)}`, [3])];
  test('stays on record with what was read and counts for nothing', () => {
    const { entries, content } = keys(facts);
    expect(content.levelBook.readings).toEqual([]);
    expect(entries).toMatchObject([{ struck: true, disputed: false, value: { intermediate: 1.2 } }]);
  });
  test('comes back by a fact that knows of the strike', () => {
    const again = recorded(5, 'reading', `reading:${id(3)}`, book(3, 1, 1.2), [3, 4]);
    expect(keys([...facts, again]).content.levelBook.readings).toHaveLength(1);
  });
  test('against a correction that did not know of it is disputed, and the reading is kept', () => {
    const corrected = recorded(5, 'reading', `reading:${id(3)}`, book(3, 1, 1.3), [3]);
    const { entries, content, disputed } = keys([...facts, corrected]);
    expect(disputed).toEqual([`reading:${id(3)}`]);
    expect(entries[0]?.choices.map(({ value }) => value)).toEqual([null, book(3, 1, 1.3)]);
    expect(content.levelBook.readings[0]?.intermediate).toBe(1.3);
  });
});

describe('two phones', () => {
  const first = benchMark(1, 30.48);
  const second = benchMark(2, 30.5);
  test('that say different things leave both in view, the earlier one standing', () => {
    const { entries, content, disputed } = keys([first, second]);
    expect(disputed).toEqual(['benchMark']);
    expect(content.levelBook.benchMark.level).toBe(30.48);
    expect(entries[0]?.choices.map(({ facts }) => facts)).toEqual([[id(1)], [id(2)]]);
    expect(entries[0]?.seen).toEqual([id(1), id(2)]);
  });
  test('that say the same agree', () => {
    expect(keys([first, benchMark(2, 30.48)]).disputed).toEqual([]);
  });
  test('are settled by a fact that names both, and not by one that names one', () => {
    expect(keys([first, second, benchMark(3, 30.6, [1, 2])])).toMatchObject({ disputed: [], content: { levelBook: { benchMark: { level: 30.6 } } } });
    expect(keys([first, second, benchMark(3, 30.6, [1])]).disputed).toEqual(['benchMark']);
  });
  test('that name each other (a broken phone) are folded all the same', () => {
    expect(keys([benchMark(1, 30.48, [2]), benchMark(2, 30.5, [1])]).disputed).toEqual(['benchMark']);
  });
  test('what was refused, came late or is in quarantine counts for nothing, but tells what was known', () => {
    const refused = { ...benchMark(2, 31, [1]), verdict: 'refused' as const };
    expect(keys([first, refused]).content.levelBook.benchMark.level).toBe(30.48);
    expect(keys([first, refused, benchMark(3, 30.6, [2])])).toMatchObject({ disputed: [], content: { levelBook: { benchMark: { level: 30.6 } } } });
  });
});

describe('an entry', () => {
  const base = reading(3, 1, 1.2).fact;
  test.each([
    ['the id of its reading', { entry: `reading:${id(4)}` }], ['its kind', { entry: 'benchMark' }], ['something', { entry: 'reading:' }], ['a known thing', { entry: 'weather' }],
    ['no number but a mark', { entry: `reading:${id(3)}#x` }],
  ])('must name %s', (_, change) => {
    expect(SurveyFact.safeParse({ ...base, ...change }).success).toBe(false);
  });
  test('of a desk that named a thing twice has a number', () => {
    expect(SurveyFact.safeParse({ ...base, entry: `reading:${id(3)}#2` }).success).toBe(true);
    expect(SurveyFact.safeParse(base).success).toBe(true);
  });
});
