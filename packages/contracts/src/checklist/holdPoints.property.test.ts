import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FieldFact, StoredFact } from '../checklists.ts';
import { buildChecklist, type BuiltItem } from './build.ts';
import { foldItem } from './fold.ts';
import { beforeHandover, heldBy, holdPointsNow, type ItemInState } from './holdPoints.ts';
import { holdPointRules } from './guards.ts';
import { site } from './sites.test-d.ts';

// The same cases in every run: a failure is found again by running it.
fc.configureGlobal({ seed: 20_261_128 });

const items = await buildChecklist(site('tern-hollow'));
const noon = Date.parse('2026-03-02T12:00:00Z');
const now = { at: noon, mayDig: true };
const uuid = (n: number) => `00000000-0000-7000-8000-${String(n).padStart(12, '0')}`;

type Judged = Pick<StoredFact, 'fact' | 'verdict'>;

/** Facts of one item as phones might record them: any kind, any order, any knowledge of earlier ones. */
function facts(item: BuiltItem): fc.Arbitrary<Judged[]> {
  const measure = item.requirement.measures[0];
  const bodies: fc.Arbitrary<Record<string, unknown>>[] = [
    fc.constant({ kind: 'ticked', note: '' }),
    fc.record({ kind: fc.constant('photo'), photoId: fc.integer({ min: 1, max: 4 }).map((n) => uuid(700 + n)), takenAt: fc.integer({ min: -5, max: 0 }).map((h) => new Date(noon + h * 3_600_000).toISOString()) }),
    fc.record({ kind: fc.constant('signed'), signer: fc.constantFrom('homeowner', 'electrician', 'crewLead'), name: fc.constant('A'), licence: fc.constant(''), statement: fc.constant('') }),
    fc.constant({ kind: 'document', reference: 'x', validOn: null }),
    fc.constantFrom('pumpModel', 'pumpSerial').map((name) => ({ kind: 'written', name, text: 'A-17' })),
    fc.constant({ kind: 'rained' }), fc.constantFrom({ kind: 'failed', reason: 'bad' }, { kind: 'corrected', note: 'good' }, { kind: 'notApplicable', reason: 'none here' }, { kind: 'begun' }, { kind: 'waived', reason: 'the owner says so' }),
    ...(measure === undefined ? [] : [fc.constantFrom(measure.target, measure.target + 5).map((value) => ({ kind: 'measured', name: measure.name, value }))]),
  ];
  const one = fc.record({ body: fc.oneof(...bodies), sees: fc.array(fc.nat({ max: 11 }), { maxLength: 6 }), verdict: fc.constantFrom('kept', 'kept', 'kept', 'late', 'refused') });
  return fc.array(one, { maxLength: 12 }).map((list) => list.map(({ body, sees, verdict }, n) => ({
    fact: {
      id: uuid(n), deviceId: uuid(900), seq: n + 1, deviceTime: new Date(noon - 3_600_000 + n).toISOString(), factVersion: 1, revisionId: uuid(901), itemKey: item.key,
      requirementHash: item.requirementHash, seen: sees.filter((s) => s < n).map(uuid), ...body,
    } as FieldFact,
    verdict: verdict as StoredFact['verdict'],
  })));
}

const anyItem = fc.constantFrom(...items).chain((item) => facts(item).map((list) => ({ item, list })));

describe('the fold', () => {
  test('gives the same whatever the order of arrival, and when a fact arrives twice', () => {
    fc.assert(fc.property(anyItem.chain(({ item, list }) => fc.shuffledSubarray(list, { minLength: list.length }).map((shuffled) => ({ item, list, shuffled }))), ({ item, list, shuffled }) => {
      const folded = foldItem(item.requirement, list);
      const other = foldItem(item.requirement, [...shuffled, ...shuffled.slice(0, 2)]);
      expect(other.state).toBe(folded.state);
      expect([...other.missing].sort()).toEqual([...folded.missing].sort());
      expect(other.freshUntil).toBe(folded.freshUntil);
    }), { numRuns: 200 });
  });

  test('never proves an item without each kind of evidence in a kept fact', () => {
    fc.assert(fc.property(anyItem, ({ item, list }) => {
      if (foldItem(item.requirement, list).state !== 'proven') return;
      const kept = list.filter(({ verdict }) => verdict === 'kept').map(({ fact }) => fact);
      const kinds = { tick: 'ticked', photo: 'photo', value: 'measured', signature: 'signed', document: 'document', text: 'written' } as const;
      for (const evidence of item.requirement.evidence) expect(kept.some(({ kind }) => kind === kinds[evidence])).toBe(true);
      const photos = new Set(kept.flatMap((fact) => (fact.kind === 'photo' ? [fact.photoId] : [])));
      expect(photos.size).toBeGreaterThanOrEqual(item.requirement.minPhotos);
    }), { numRuns: 200 });
  });
});

const pourItems = items.filter(({ template }) => ['D2', 'D4', 'I1', 'I2', 'I3'].includes(template));
const channel = pourItems[0]?.part ?? null;

function inState(item: BuiltItem, list: readonly Judged[]): ItemInState {
  const { state, freshUntil, readyAt } = foldItem(item.requirement, list);
  return { key: item.key, template: item.template, part: item.part, holdPoint: item.holdPoint, state, freshUntil, readyAt };
}

describe('hold points', () => {
  test('open only when every item of theirs is proven or waived and its photos are fresh', () => {
    fc.assert(fc.property(fc.tuple(...items.map((item) => fc.oneof({ weight: 3, arbitrary: fc.constant([]) }, facts(item)))), (lists) => {
      const states = items.map((item, index) => inState(item, lists[index] ?? []));
      for (const point of holdPointsNow(states, now)) {
        const own = states.filter(({ key }) => point.items.includes(key));
        // The look of a day is not waived; what is dug on waits for the looks after the first.
        const looks = point.id.startsWith('HP-trench');
        const notYet = point.id === 'HP-trench again' && own.every((item) => item.freshUntil === null && item.state !== 'failed' && item.state !== 'disputed');
        const ok = notYet || own.every((item) => (item.state === 'waived' && !looks) || (item.state === 'proven' && (item.freshUntil === null || noon <= item.freshUntil) && noon >= (item.readyAt ?? -Infinity)));
        expect(point.open).toBe(ok);
        expect(own.length).toBeGreaterThan(0);
      }
    }), { numRuns: 60 });
  });

  test('hold the pour while the tape has no photo, whoever ticks what', () => {
    const tape = pourItems.find(({ template }) => template === 'D4');
    if (tape === undefined) throw new Error('no D4');
    fc.assert(fc.property(fc.tuple(...pourItems.map((item) => facts(item))), (lists) => {
      const states = pourItems.map((item, index) => {
        const list = (lists[index] ?? []).filter(({ fact }) => item.template !== 'D4' || (fact.kind !== 'photo' && fact.kind !== 'waived'));
        return inState(item, list);
      });
      expect(heldBy(states, `I3:${String(channel)}`, now).some(({ holdPoint, items: by }) => holdPoint === 'HP-13' && by.includes(tape.key))).toBe(true);
    }), { numRuns: 200 });
  });

  const proven = (freshUntil: number | null): ItemInState[] => pourItems.map(({ key, template, part }) => ({ key, template, part, state: 'proven', freshUntil: template === 'D4' ? freshUntil : null }));
  test('let the pour begin with tape, forms and re-check proven, but not two hours later', () => {
    const pour = `I3:${String(channel)}`;
    expect(heldBy(proven(noon), pour, now)).toEqual([]);
    expect(heldBy(proven(noon - 1), pour, now)).toEqual([{ holdPoint: 'HP-13', items: [`D4:${String(channel)}`] }]);
    expect(heldBy(proven(noon - 1), pour, { at: null, mayDig: true })).toEqual([]);
  });

  test('keep "not applicable" out of a hold point', () => {
    const states = proven(noon).map((item) => (item.template === 'I1' ? { ...item, state: 'notApplicable' as const } : item));
    expect(heldBy(states, `I3:${String(channel)}`, now)).toEqual([{ holdPoint: 'HP-13', items: [`I1:${String(channel)}`] }]);
  });

  test('hold the digging while the tickets do not say "may dig", even with A2 proven', () => {
    const states = items.map(({ key, template, part, holdPoint }): ItemInState => ({ key, template, part, holdPoint, state: 'proven', freshUntil: null }));
    expect(heldBy(states, 'C5', { at: noon, mayDig: false })).toEqual([{ holdPoint: 'HP-1', items: ['A2'] }]);
    expect(heldBy(states, 'C5', now)).toEqual([]);
  });

  test('guard what the trade says they guard, on a job with everything', () => {
    // Looked at yesterday, so that digging on waits as well.
    const open = items.map(({ key, template, part, holdPoint }): ItemInState => ({ key, template, part, holdPoint, state: 'open', freshUntil: template === 'C5' ? noon - 1 : null }));
    const present = new Set(items.map(({ template }) => template));
    for (const rule of holdPointRules) {
      const points = holdPointsNow(open, now).filter(({ id }) => id === rule.id);
      const guarded = new Set(points.flatMap(({ guards }) => guards.map((key) => key.split(':')[0])));
      if (rule.items.every((id) => !present.has(id))) expect(points).toEqual([]);
      else expect(guarded).toEqual(new Set(rule.guards.filter((id) => present.has(id) || id === 'handover')));
    }
  });

  test('and steps left undone stand between the work and the handover, each of them', () => {
    fc.assert(fc.property(fc.array(fc.constantFrom('open', 'started', 'proven', 'notApplicable', 'failed', 'disputed', 'waived'), { minLength: items.length, maxLength: items.length }), (as) => {
      const states = items.map(({ key, template, part, holdPoint }, index): ItemInState => ({ key, template, part, holdPoint, state: as[index] ?? 'open', freshUntil: 0 }));
      const { held, unsettled } = beforeHandover(states);
      const named = new Set([...held.flatMap(({ items: by }) => by), ...unsettled]);
      for (const { key, state } of states) {
        const proves = items.find((item) => item.key === key)?.holdPoint !== null;
        expect(named.has(key), `${key} ${state}`).toBe(state !== 'proven' && state !== 'waived' && !(state === 'notApplicable' && !proves));
      }
    }), { numRuns: 60 });
  });
});
