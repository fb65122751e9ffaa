import { foldSurvey, SurveyFact, type FoldedSurvey } from '@yardfall/contracts';
import { describe, expect, test } from 'vitest';
import { standingOf } from './fieldBook.ts';
import { answersOf, bookOf } from './fromFold.ts';
import { bookOfList } from './listBook.ts';
import { answerFacts, beginFacts, listFacts, pinFacts, shotFacts, shotPhotoFacts, stepPhotoFacts, strikeFacts, type NewShot } from './yardFacts.ts';
import type { FactDraft } from '../../../lib/outbox.ts';

const FOOT = 0.3048;
const head = { mode: 'heightOfInstrument', benchMark: { name: 'Floor', level: 100 * FOOT }, rod: 13 * FOOT } as const;
const surveyId = '01930000-0000-7000-8000-00000000f001';
const words = { drainName: 'Old drain', observation: (id: string) => `seen: ${id}` };
const uuid = (n: number) => `01930000-0000-7000-8000-${String(n).padStart(12, '0')}`;

/** A phone that writes down what is asked of it, and reads its own facts back. */
class Phone {
  readonly facts: SurveyFact[] = [];
  get fold(): FoldedSurvey { return foldSurvey(this.facts.map((fact) => ({ fact, verdict: 'kept' as const })), null); }
  get book() { return bookOf(this.fold, 4, new Set()); }
  write(drafts: readonly FactDraft[]): number {
    for (const draft of drafts) {
      const n = this.facts.length + 1;
      const seen = this.fold.entries.find(({ key }) => key === draft.entry)?.seen ?? [];
      // The schema of the contract refuses what the office would refuse.
      this.facts.push(SurveyFact.parse({ ...draft, id: uuid(n), deviceId: uuid(900_000), seq: n, deviceTime: '2026-05-04T14:00:00Z', factVersion: 1, jobId: uuid(900_001), surveyId, seen: [...seen] }));
    }
    return drafts.length;
  }
  shoot(n: number, shot: Omit<NewShot, 'id' | 'value' | 'distance' | 'tailwater'> & { readonly feet: number; readonly distance?: number }): number {
    return this.write(shotFacts(this.fold, { id: uuid(1000 + n), kind: shot.kind, point: shot.point, role: shot.role, value: shot.feet * FOOT, distance: shot.distance ?? null, tailwater: null }));
  }
}

function begun(): Phone {
  const phone = new Phone();
  phone.write(beginFacts(phone.fold, 'Visit 1', head));
  return phone;
}

describe('what a press writes down', () => {
  test('a book of two set-ups is read back as it was shot', () => {
    const phone = begun();
    phone.shoot(1, { kind: 'backsight', point: 'Floor', role: 'floor', feet: 4.52 });
    phone.shoot(2, { kind: 'intermediate', point: 'Channel', role: 'collectorInvert', feet: 5.37 });
    phone.shoot(3, { kind: 'foresight', point: 'Gate', role: 'other', feet: 4.7 });
    phone.shoot(4, { kind: 'backsight', point: 'Gate', role: 'other', feet: 4.31 });
    phone.shoot(5, { kind: 'intermediate', point: 'Gutter', role: 'outlet', feet: 4.78, distance: 140 * FOOT });
    phone.shoot(6, { kind: 'foresight', point: 'Floor', role: 'floor', feet: 4.13 });
    expect(phone.fold.name).toBe('Visit 1');
    expect(phone.book.shots.map(({ kind, point, role }) => [kind, point, role])).toEqual([
      ['backsight', 'Floor', 'floor'], ['intermediate', 'Channel', 'collectorInvert'], ['foresight', 'Gate', 'other'], ['backsight', 'Gate', 'other'], ['intermediate', 'Gutter', 'outlet'], ['foresight', 'Floor', 'floor'],
    ]);
    const { reduced, gravity } = standingOf(phone.book);
    expect(reduced.verdict).toBe('pass');
    expect(gravity.map(({ name, margin, verdict }) => [name, Number((margin / FOOT).toFixed(6)), verdict])).toEqual([['Gutter', -0.9, 'short']]);
  });
  test('what a point is goes down once, a turning point not at all, and a new length again', () => {
    const phone = begun();
    expect(phone.shoot(1, { kind: 'backsight', point: 'Floor', role: 'floor', feet: 4.52 })).toBe(2);
    expect(phone.shoot(2, { kind: 'foresight', point: 'Gate', role: 'other', feet: 4.7 })).toBe(1);
    expect(phone.shoot(3, { kind: 'intermediate', point: 'Gutter', role: 'outlet', feet: 4.7, distance: 10 })).toBe(2);
    expect(phone.shoot(4, { kind: 'intermediate', point: 'Gutter', role: 'outlet', feet: 4.7, distance: 10 })).toBe(1);
    expect(phone.shoot(5, { kind: 'foresight', point: 'Gutter', role: 'other', feet: 4.7 })).toBe(1);
    expect(phone.shoot(6, { kind: 'intermediate', point: 'Gutter', role: 'outlet', feet: 4.7, distance: 12 })).toBe(2);
    expect(phone.fold.content.points.find(({ point }) => point === 'Gutter')).toMatchObject({ role: 'outlet', distance: 12 });
  });
  test('a second head changes mark and mode and keeps the name', () => {
    const phone = begun();
    expect(phone.write(beginFacts(phone.fold, 'Visit 2', { ...head, mode: 'direct' }))).toBe(2);
    expect([phone.fold.name, phone.book.mode]).toEqual(['Visit 1', 'direct']);
  });
  test('struck stays, counts again as it was; photos and pins join; what is not there writes nothing', () => {
    const phone = begun();
    phone.shoot(1, { kind: 'backsight', point: 'Floor', role: 'floor', feet: 4.52 });
    const entry = `reading:${uuid(1001)}`;
    phone.write(shotPhotoFacts(phone.fold, entry, uuid(7)));
    phone.write(shotPhotoFacts(phone.fold, entry, uuid(8)));
    phone.write(pinFacts(phone.fold, entry, { x: 3, y: -2 }));
    phone.write(strikeFacts(phone.fold, entry, true));
    expect(phone.book.shots).toMatchObject([{ struck: true, point: 'Floor', pin: { x: 3, y: -2 }, photoIds: [uuid(7), uuid(8)] }]);
    expect(phone.fold.content.levelBook.readings).toEqual([]);
    expect(phone.write(strikeFacts(phone.fold, entry, true))).toBe(0);
    phone.write(strikeFacts(phone.fold, entry, false));
    expect(phone.book.shots[0]).toMatchObject({ struck: false, photoIds: [uuid(7), uuid(8)] });
    expect([strikeFacts(phone.fold, 'reading:x', true), pinFacts(phone.fold, 'reading:x', { x: 0, y: 0 }), shotPhotoFacts(phone.fold, 'reading:x', uuid(7))]).toEqual([[], [], []]);
    expect(phone.fold.disputed).toEqual([]);
  });
  test("a surveyor's list is a book that is read directly", () => {
    const phone = new Phone();
    const list = bookOfList([{ point: '1', description: 'FFE', x: 0, y: 0, level: 30.5 }, { point: '2', description: 'SILL', x: 1, y: 2, level: 30.4 }]);
    phone.write(beginFacts(phone.fold, 'List', { ...head, mode: 'direct', benchMark: list?.benchMark ?? head.benchMark }));
    let n = 1;
    phone.write(listFacts(phone.fold, list?.shots ?? [], () => uuid(2000 + n++)));
    expect(phone.book.shots.map(({ point, role, kind, pin }) => [point, role, kind, pin])).toEqual([['FFE 1', 'floor', 'direct', { x: 0, y: 0 }], ['SILL 2', 'sill', 'direct', { x: 1, y: 2 }]]);
    expect(standingOf(phone.book).levels.get('SILL 2')).toBeCloseTo(30.4, 9);
  });
});

describe('what an answer writes down', () => {
  const answer = (phone: Phone, step: string, picks: readonly string[], figures: Readonly<Record<string, number>> = {}) => phone.write(answerFacts(phone.fold, surveyId, step, { picks, figures }, words));
  test('is read back; a photo alone is no answer and is kept by one', () => {
    const phone = begun();
    phone.write(stepPhotoFacts(phone.fold, 'hoseOutline', uuid(7)));
    expect(answersOf(phone.fold)).toEqual({});
    answer(phone, 'hoseOutline', ['runsToHouse']);
    expect(answersOf(phone.fold)['hoseOutline']).toMatchObject({ picks: ['runsToHouse'], photoIds: [uuid(7)] });
  });
  test('what must be referred is an observation of the survey, for as long as the answers bear it out', () => {
    const phone = begun();
    answer(phone, 'structure', ['leaningWall', 'highWall']);
    expect(phone.fold.content.observations.map(({ kind, note }) => `${kind} ${note}`).sort()).toEqual(['leaningWall seen: leaningWall', 'retainingWallOver4ft seen: highWall']);
    answer(phone, 'structure', ['leaningWall']);
    expect(phone.fold.content.observations.map(({ kind }) => kind)).toEqual(['leaningWall']);
    answer(phone, 'structure', ['none']);
    expect(phone.fold.content.observations).toEqual([]);
    answer(phone, 'structure', ['leaningWall']);
    expect(phone.fold.content.observations.map(({ kind }) => kind)).toEqual(['leaningWall']);
  });
  test('an old drain that backed up is a test of the survey, with its dye and camera', () => {
    const phone = begun();
    answer(phone, 'dryDays', ['no']);
    answer(phone, 'timing', ['fromPipe']);
    answer(phone, 'drainFlow', ['backedUp'], { diameter: 0.1016, flow: 0.0005, seconds: 360 });
    answer(phone, 'dye', ['atOutlet']);
    answer(phone, 'camera', ['roots'], { stop: 9.4 });
    expect(phone.fold.content.drainTests).toHaveLength(1);
    expect(phone.fold.content.drainTests[0]).toMatchObject({ name: 'Old drain', backedUpAfter: 360, dyeSeen: true, cameraStop: 9.4 });
    answer(phone, 'drainFlow', ['ranAway'], { diameter: 0.1016, flow: 0.0005, seconds: 600 });
    expect(phone.fold.content.drainTests[0]?.backedUpAfter).toBeNull();
  });
});
