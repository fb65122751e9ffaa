import type { DraftEdit, DraftOperation, Problem, Revision } from '@yardfall/contracts';
import { applyOperations, canonicalBytes, sha256Hex } from '@yardfall/contracts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { key, makeCompany, makePerson, type Person, type TestCompany } from '../support/actors.ts';
import { startApp, type TestApp } from '../support/app.ts';
import { draftRevision, get } from '../support/builders.ts';

let test: TestApp;
let ours: TestCompany;
let second: Person;

beforeAll(async () => {
  test = await startApp();
  ours = await makeCompany(test);
  second = await makePerson(test, ours.id, ['estimator']);
});
afterAll(() => test.close());

const urlOf = (revision: Revision) => `/jobs/${revision.jobId}/revisions/${revision.id}`;
const edits = 200;
const atOnce = 10;

interface Hand {
  readonly agent: Person['agent'];
  readonly accepted: DraftOperation[];
  readonly refused: { readonly operations: DraftOperation[]; readonly problem: Problem }[];
}

/** One browser: it sends its edits on the version it last saw; what comes back as a choice is shown and let go, and the draft is read again. */
async function work(hand: Hand, revision: Revision, all: readonly DraftOperation[]): Promise<void> {
  let base = revision.version;
  let busy = 0;
  for (let from = 0; from < all.length; from += atOnce) {
    const operations = all.slice(from, from + atOnce);
    const answer = await hand.agent.post(`/api/v1${urlOf(revision)}/operations`).set(key()).send({ base, operations });
    if (answer.status === 200) {
      hand.accepted.push(...operations);
      base = (answer.body as Revision).version;
    } else if (answer.status === 503) {
      // The office is busy: nothing was changed, and the same edits are sent again, as the page does.
      busy += 1;
      expect(busy).toBeLessThan(100);
      from -= atOnce;
    } else {
      expect(answer.status).toBe(409);
      hand.refused.push({ operations, problem: answer.body as Problem });
      base = (await get<Revision>(hand.agent, urlOf(revision))).version;
    }
  }
}

async function log(revision: Revision): Promise<DraftEdit[]> {
  const all: DraftEdit[] = [];
  for (let next: string | null = ''; next !== null;) {
    const page: { items: DraftEdit[]; next: string | null } = await get(ours.estimator.agent, `${urlOf(revision)}/operations?limit=100${next === '' ? '' : `&cursor=${encodeURIComponent(next)}`}`);
    all.push(...page.items);
    next = page.next;
  }
  return all.reverse();
}

const rename = (part: string, name: string): DraftOperation => ({ kind: 'replace', path: ['system', 'parts', `@${part}`, 'name'], value: name });
const lengthen = (part: string, length: number): DraftOperation => ({ kind: 'replace', path: ['system', 'parts', `@${part}`, 'length'], value: length });

/** What each hand does: even edits on a part of its own, odd ones on a part that both want. */
const editsOf = (own: string, name: string): DraftOperation[] =>
  Array.from({ length: edits }, (_, i) => (Math.floor(i / atOnce) % 2 === 0 ? lengthen(own, 5 + i / 100) : rename('CH1', `${name} ${String(i)}`)));

describe('two people on one draft, two hundred edits each', () => {
  it('makes what the log says, one edit after the other; every refused one came back with who and what stands there', async () => {
    const { revision } = await draftRevision(ours);
    const one: Hand = { agent: ours.estimator.agent, accepted: [], refused: [] };
    const two: Hand = { agent: second.agent, accepted: [], refused: [] };
    const hands = [one, two];
    await Promise.all([work(one, revision, editsOf('P1', 'One')), work(two, revision, editsOf('N1', 'Two'))]);

    const after = await get<Revision>(ours.estimator.agent, urlOf(revision));
    const entries = await log(revision);
    const replayed = applyOperations(revision.document, entries.map(({ operation }) => operation));
    expect(await sha256Hex(canonicalBytes(replayed))).toBe(after.documentSha256);

    for (const { accepted, refused } of hands) {
      expect(accepted.length + refused.reduce((sum, { operations }) => sum + operations.length, 0)).toBe(edits);
      for (const { operations, problem } of refused) {
        expect(problem.code).toBe('draft.conflict');
        expect(problem.params).toMatchObject({ part: 'system.parts.@CH1', path: 'system.parts.@CH1.name', removed: false });
        expect(String(problem.params?.['by'])).not.toBe('');
        expect(operations.every((operation) => operation.kind === 'replace' && operation.path.includes('@CH1'))).toBe(true);
      }
    }
    expect(one.refused.length + two.refused.length).toBeGreaterThan(0);
    // Nothing is stored that was refused, nothing is lost that was taken.
    expect(entries.map(({ operation }) => JSON.stringify(operation)).sort()).toEqual(hands.flatMap(({ accepted }) => accepted.map((operation) => JSON.stringify(operation))).sort());
    const lengthOf = (id: string) => after.document.system.parts.find((part) => part.id === id);
    expect([lengthOf('P1'), lengthOf('N1')].map((part) => (part && 'length' in part ? part.length : null))).toEqual([5 + 189 / 100, 5 + 189 / 100]);
  }, 600_000); // some forty evaluations, one after the other: a busy machine takes minutes

  it('gives any moment of a draft back, with who changed what', async () => {
    const { revision } = await draftRevision(ours);
    const send = (agent: Person['agent'], base: number, operation: DraftOperation) => agent.post(`/api/v1${urlOf(revision)}/operations`).set(key()).send({ base, operations: [operation] }).expect(200);
    await send(ours.estimator.agent, 1, rename('CH1', 'First'));
    await send(second.agent, 2, rename('CH1', 'Second'));
    const entries = await log(revision);
    expect(entries.map(({ seq, by, operation }) => [seq, by, operation])).toEqual([[2, 'Test estimator', rename('CH1', 'First')], [3, expect.any(String), rename('CH1', 'Second')]]);
    const moment = (seq: number) => get<{ seq: number; document: Revision['document'] }>(ours.estimator.agent, `${urlOf(revision)}/operations/${String(seq)}`);
    const nameAt = async (seq: number) => (await moment(seq)).document.system.parts.find(({ id }) => id === 'CH1')?.name;
    expect((await moment(0)).document).toEqual(revision.document);
    expect([await nameAt(2), await nameAt(3)]).toEqual(['First', 'Second']);
  });
});
