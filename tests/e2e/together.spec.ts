import { expect, test, type Locator } from '@playwright/test';
import type { DraftEdit, DraftOperation, Revision } from '@yardfall/contracts';
import { applyOperations, canonicalBytes, sha256Hex } from '@yardfall/contracts';
import { ternHollow } from './support/bigYard.ts';
import { openYard } from './support/drag.ts';
import { part } from './support/office.ts';
import { api, signIn, type Person } from './support/people.ts';

/** Of each hand; E2E_EDITS=200 for the whole of it, which takes five minutes. */
const edits = Number(process.env.E2E_EDITS ?? 20);
const atOnce = 10;
const shared = 'CH1';

interface Hand {
  readonly person: Person;
  readonly design: Locator;
  /** A part that only this hand changes, by id and by name. */
  readonly own: { readonly id: string; readonly name: string };
  readonly says: string;
  readonly accepted: DraftOperation[];
  /** Edits that came back, each time as the office refused them. */
  readonly refused: DraftOperation[][];
  /** How many were let go by the person's own choice. */
  letGo: number;
}

function handOf(person: Person, design: Locator, own: Hand['own'], says: string): Hand {
  const hand: Hand = { person, design, own, says, accepted: [], refused: [], letGo: 0 };
  person.page.on('response', (answer) => {
    if (answer.request().method() !== 'POST' || !answer.url().endsWith('/operations')) return;
    const { operations } = answer.request().postDataJSON() as { readonly operations: DraftOperation[] };
    if (answer.status() === 200) hand.accepted.push(...operations);
    if (answer.status() === 409) hand.refused.push(operations);
  });
  return hand;
}

const choose = (design: Locator, name: string) => design.locator('.part-list').getByRole('button', { name: new RegExp(`^${name}`) }).click();
const met = (design: Locator) => design.getByText('Somebody else changed the same part');

/** What a hand typed last in each of the two fields, as the page writes it. */
interface Typed {
  name: string;
  length: string;
}

/** Ten edits at the page, on the own part or on the one that both want. */
async function typeSome({ design, own, says }: Hand, from: number, typed: Typed): Promise<void> {
  const apart = (from / atOnce) % 2 === 0;
  await choose(design, apart ? own.name : '(One|Two|Patio channel)');
  const field = apart ? design.locator('.part-form').getByLabel('Length') : design.locator('.part-form').getByRole('textbox', { name: 'Name', exact: true });
  for (let at = from; at < from + atOnce; at += 1) {
    const text = apart ? (20 + at / 100).toFixed(2) : `${says} ${String(at)}`;
    await field.fill(apart ? `${text} ft` : text);
    typed[apart ? 'length' : 'name'] = text;
  }
  await choose(design, apart ? own.name : '(One|Two|Patio channel)');
}

/** Every refused edit is on this person's screen: the newest at its place in words, the earlier ones there by their number. Returns how many wait in all. */
async function seenRefused({ design, refused }: Hand, typed: Typed): Promise<number> {
  const notice = design.locator('.notice').filter({ hasText: 'Somebody else changed the same part' });
  let waiting = 0;
  await expect(async () => {
    await expect(notice.locator('ul').first().locator('li').first()).toContainText('made it');
    const shown = await notice.locator('ul').last().locator('li').allInnerTexts();
    const counts = shown.map((text) => Number(/the last of (\d+)/.exec(text)?.[1] ?? 1));
    for (const [field, newest] of [['name', typed.name], ['length', typed.length]] as const) {
      const some = (refused.at(-1) ?? []).filter((operation) => operation.kind === 'replace' && operation.path.at(-1) === field);
      if (some.length === 0) continue;
      const line = shown.findIndex((text) => text.includes(newest));
      expect(line, `${newest} on the screen: ${shown.join(' | ')}`).toBeGreaterThanOrEqual(0);
      expect(counts[line]).toBeGreaterThanOrEqual(some.length);
    }
    waiting = counts.reduce((sum, count) => sum + count, 0);
  }).toPass({ timeout: 60_000 });
  return waiting;
}

/** After a pause the edits are in the office, or the page asks what becomes of them; the person keeps and lets go by turns. */
async function settle(hand: Hand, typed: Typed): Promise<void> {
  const { design } = hand;
  for (;;) {
    await expect(design.getByText('Saved in the office').or(met(design)).first()).toBeVisible({ timeout: 60_000 });
    if (!(await met(design).isVisible())) return;
    const times = hand.refused.length;
    const waiting = await seenRefused(hand, typed);
    const keeps = times % 2 === 1;
    if (!keeps) hand.letGo += waiting;
    await design.getByRole('button', { name: keeps ? 'Put mine on top' : 'Take theirs' }).click();
    // Put on top, they may meet the next edits of the other hand at once.
    await expect.poll(async () => hand.refused.length > times || !(await met(design).isVisible()), { timeout: 60_000 }).toBe(true);
  }
}

/** Both hands come to the shared part at the same moment, so that their edits meet. */
class Meeting {
  private readonly waiting: (() => void)[] = [];

  async join(): Promise<void> {
    const all = new Promise<void>((resolve) => { this.waiting.push(resolve); });
    if (this.waiting.length === 2) for (const go of this.waiting.splice(0)) go();
    await all;
  }
}

async function work(hand: Hand, meeting: Meeting): Promise<void> {
  const typed = { name: '', length: '' };
  for (let from = 0; from < edits; from += atOnce) {
    if ((from / atOnce) % 2 === 1) await meeting.join();
    await typeSome(hand, from, typed);
    await settle(hand, typed);
  }
}

async function log(person: Person, path: string): Promise<DraftOperation[]> {
  const all: DraftEdit[] = [];
  for (let next: string | null = ''; next !== null;) {
    const { body }: { readonly body: { items: DraftEdit[]; next: string | null } } = await api(person, 'GET', `${path}/operations?limit=100${next === '' ? '' : `&cursor=${encodeURIComponent(next)}`}`);
    all.push(...body.items);
    next = body.next;
  }
  return all.reverse().map(({ operation }) => operation);
}

const texts = (operations: readonly DraftOperation[]) => operations.map((operation) => JSON.stringify(operation)).sort();

test('two browsers on one draft, many edits each: the draft is what the log says, and every edit that was refused was on a screen', async ({ browser }) => {
  test.setTimeout(600_000);
  const first = await openYard(browser, `Together ${String(Date.now() % 100_000)}`, ternHollow());
  const { jobId, revisionId } = first;
  const path = `/jobs/${jobId}/revisions/${revisionId}`;
  const read = async () => (await api<Revision>(first.person, 'GET', path)).body;
  const began = await read();
  const owner = await signIn(browser, 'owner');
  await owner.page.goto(`/jobs/${jobId}`);
  const design = await part(owner.page, 'Design');
  await expect(design.getByText('Saved in the office')).toBeVisible();

  // Two pages compute at every key on one machine: they are slow to answer, and what is asserted is never a time.
  for (const { page } of [first.person, owner]) page.setDefaultTimeout(90_000);

  const hands = [handOf(first.person, first.design, { id: 'P1', name: 'Channel to basin' }, 'One'), handOf(owner, design, { id: 'N1', name: 'Discharge line' }, 'Two')];
  const meeting = new Meeting();
  await Promise.all(hands.map((hand) => work(hand, meeting)));

  const after = await read();
  const entries = await log(first.person, path);
  const replayed = applyOperations(began.document, entries);
  expect(await sha256Hex(canonicalBytes(replayed))).toBe(after.documentSha256);
  // Nothing is stored that was refused and let go, nothing is lost that was taken.
  expect(texts(entries)).toEqual(texts(hands.flatMap(({ accepted }) => accepted)));
  for (const { accepted, letGo, own } of hands) {
    expect(accepted.length + letGo).toBe(edits);
    expect(accepted.some((operation) => operation.kind === 'replace' && operation.path.includes(`@${own.id}`))).toBe(true);
  }
  expect(hands.some(({ refused }) => refused.length > 0)).toBe(true);
  // Both screens come to the name that the office holds.
  const name = after.document.system.parts.find(({ id }) => id === shared)?.name ?? '';
  for (const hand of hands) await expect(hand.design.locator('.part-list')).toContainText(name, { timeout: 60_000 });
  for (const { person } of hands) {
    expect(person.complaints).toEqual([]);
    await person.context.close();
  }
});
