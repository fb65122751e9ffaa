import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { SurveyBase } from '../surveyFacts.ts';
import { SurveyContent } from '../surveys.ts';
import { baseEntries } from './content.ts';
import { differences } from './differences.ts';
import { foldSurvey, type JudgedSurveyFact, type SurveyEntry } from './fold.ts';
import { book, id, recorded, struck } from './testing.ts';

const runs = { seed: 20_261_128, numRuns: 300 };

/** What a phone may do next: learn all that another phone knows, or record something of an entry. */
const step = fc.record({
  phone: fc.nat({ max: 2 }), learnsFrom: fc.option(fc.nat({ max: 2 })), entry: fc.nat({ max: 3 }), value: fc.integer({ min: 0, max: 2 }),
  strikes: fc.boolean(), knows: fc.boolean(), verdict: fc.constantFrom('kept', 'kept', 'kept', 'kept', 'late', 'refused', 'quarantined'),
});
type Step = typeof step extends fc.Arbitrary<infer T> ? T : never;

const entryOf = (n: number): string => (n === 3 ? 'benchMark' : `reading:${id(1000 + n)}`);

/** Three phones that each fold what they know, and record with it in view (or, when broken, with nothing in view). */
function play(steps: readonly Step[]): JudgedSurveyFact[] {
  const known: JudgedSurveyFact[][] = [[], [], []];
  const all: JudgedSurveyFact[] = [];
  steps.forEach(({ phone, learnsFrom, entry, value, strikes, knows, verdict }, index) => {
    const mine = known[phone] ?? [];
    if (learnsFrom !== null) for (const one of known[learnsFrom] ?? []) if (!mine.includes(one)) mine.push(one);
    const key = entryOf(entry);
    const seen = knows ? mine.filter(({ fact }) => fact.entry === key).map(({ fact }) => Number(fact.id.slice(-12))) : [];
    const made = strikes ? struck(index + 1, key, seen)
      : entry === 3 ? recorded(index + 1, 'benchMark', key, { name: 'Floor', level: value }, seen)
        : recorded(index + 1, 'reading', key, book(1000 + entry, value, value), seen);
    const judged = { ...made, verdict } as JudgedSurveyFact;
    mine.push(judged);
    all.push(judged);
  });
  return all;
}

const stories = fc.array(step, { maxLength: 14 }).map(play);
const shuffledWithDoubles = stories.chain((facts) => fc.tuple(fc.constant(facts), fc.shuffledSubarray([...facts, ...facts.slice(0, 4)], { minLength: facts.length + Math.min(4, facts.length) })));

describe('facts of three phones', () => {
  test('make the same survey in any order of arrival, however often each arrives', () => {
    fc.assert(fc.property(shuffledWithDoubles, ([inOrder, arrived]) => {
      expect(foldSurvey(arrived, null)).toEqual(foldSurvey(inOrder, null));
    }), runs);
  });
  test('overwrite nothing in silence: every kept value stands, is followed by a kept fact that knew of it, or is a choice of a dispute', () => {
    fc.assert(fc.property(stories, (facts) => {
      const { entries } = foldSurvey(facts, null);
      const reach = (from: string, to: string, walked = new Set<string>()): boolean => {
        if (walked.has(from)) return false;
        walked.add(from);
        const seen = facts.filter(({ fact }) => fact.id === from).flatMap(({ fact }) => fact.seen);
        return seen.includes(to) || seen.some((next) => reach(next, to, walked));
      };
      for (const { fact } of facts.filter(({ verdict }) => verdict === 'kept')) {
        const entry = entries.find(({ key }) => key === fact.entry);
        // An entry that was only ever struck holds nothing that could be lost.
        if (entry === undefined) expect(facts.every((other) => other.verdict !== 'kept' || other.fact.entry !== fact.entry || other.fact.kind === 'struck')).toBe(true);
        else {
          const inView = entry.choices.some((choice) => choice.facts.includes(fact.id));
          const followed = facts.some((other) => other.verdict === 'kept' && other.fact.entry === fact.entry && reach(other.fact.id, fact.id));
          expect(inView || followed).toBe(true);
        }
      }
    }), runs);
  });
  test('are settled by one more fact that knows of all', () => {
    fc.assert(fc.property(stories, (facts) => {
      const settled = foldSurvey(facts, null).entries.filter(({ disputed }) => disputed).map((entry, index) => (
        recorded(500 + index, entry.kind, entry.key, entry.value as never, entry.seen.map((one) => Number(one.slice(-12))))
      ));
      expect(foldSurvey([...facts, ...settled], null).disputed).toEqual([]);
    }), runs);
  });
  test('give a content that can be stored', () => {
    fc.assert(fc.property(stories, (facts) => {
      expect(SurveyContent.safeParse(foldSurvey(facts, null).content).success).toBe(true);
    }), runs);
  });
});

const number = (min: number, max: number) => fc.integer({ min, max });
const contents: fc.Arbitrary<SurveyBase> = fc.record({
  name: fc.constantFrom('Visit', 'Second visit'),
  content: fc.record({
    levelBook: fc.record({
      mode: fc.constantFrom('heightOfInstrument', 'direct'), benchMark: fc.record({ name: fc.constantFrom('Floor', 'Curb'), level: number(0, 40) }),
      readings: fc.array(fc.record({
        id: number(1, 6).map(id), point: fc.constantFrom('A', 'B', 'C'), backsight: fc.constant(null), intermediate: number(0, 4), foresight: fc.constant(null), direct: fc.constant(null), note: fc.constant(''),
      }), { maxLength: 8 }),
    }),
    points: fc.array(fc.record({ point: fc.constantFrom('A', 'B', 'C'), role: fc.constantFrom('sill', 'rim', 'other'), station: number(0, 3), distance: fc.constant(null), tailwater: fc.constant(null) }), { maxLength: 4 }),
    stageArea: fc.array(fc.record({ level: number(0, 3), area: number(0, 9) }), { maxLength: 2 }),
    drainTests: fc.array(fc.record({
      id: number(1, 3).map(id), name: fc.constant('Drain'), diameter: fc.constant(0.1), hoseFlow: fc.constant(0), backedUpAfter: fc.constant(null), dyeSeen: fc.boolean(), cameraStop: fc.constant(null),
    }), { maxLength: 3 }),
    observations: fc.array(fc.record({ id: number(1, 3).map(id), kind: fc.constant('sewage'), note: fc.constantFrom('', 'smell') }), { maxLength: 3 }),
  }),
}) as fc.Arbitrary<SurveyBase>;

/** The order of the readings is that of the book; the rest has none. */
const inNoOrder = ({ levelBook, points, drainTests, observations, ...rest }: SurveyContent) => ({
  ...rest, levelBook, ...Object.fromEntries(Object.entries({ points, drainTests, observations }).map(([name, all]) => [name, all.map((one) => JSON.stringify(one)).sort()])),
});

describe('a survey that was typed as a whole', () => {
  test('is the same survey when nothing was recorded since', () => {
    fc.assert(fc.property(contents, (base) => {
      expect(foldSurvey([], base)).toMatchObject({ ...base, disputed: [] });
    }), runs);
  });
  test('becomes any other one by the facts of the difference, and needs none to stay', () => {
    fc.assert(fc.property(contents, contents, (from, to) => {
      const drafts = differences(foldSurvey([], from), to);
      const facts = drafts.map((draft, index) => ({ fact: { ...struck(index + 1, draft.entry).fact, ...draft, id: id(index + 1) }, verdict: 'kept' }) as JudgedSurveyFact);
      const after = foldSurvey(facts, from);
      expect(after.name).toBe(to.name);
      expect(inNoOrder(after.content)).toEqual(inNoOrder(to.content));
      expect(differences(after, to)).toEqual([]);
      expect(differences(foldSurvey([], from), from)).toEqual([]);
    }), runs);
  });
  test('typed again keeps pins and photos', () => {
    const base: SurveyBase = { name: 'Visit', content: foldSurvey([recorded(1, 'reading', `reading:${id(1)}`, book(1, 1, 1))], null).content };
    const pinned = recorded(2, 'reading', `reading:${id(1)}`, { ...book(1, 1, 1), pin: { x: 3, y: 4 }, photoIds: [id(9)] });
    const before = foldSurvey([pinned], base);
    const typed = { ...base, content: { ...base.content, levelBook: { ...base.content.levelBook, readings: base.content.levelBook.readings.map((one) => ({ ...one, note: 'checked' })) } } };
    const [draft] = differences(before, typed);
    expect(draft).toMatchObject({ kind: 'reading', seen: [id(2)], value: { note: 'checked', pin: { x: 3, y: 4 }, photoIds: [id(9)] } });
    expect(baseEntries(typed).map(({ kind }) => kind)).toContain('reading');
    expect((before.entries.find(({ kind }) => kind === 'reading') as SurveyEntry<'reading'>).value.pin).toEqual({ x: 3, y: 4 });
  });
});
