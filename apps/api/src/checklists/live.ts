import { digSpans, type DigSpan, foldItem, type FoldedItem, type Held, heldBy, isCovered, type ItemInState, jobVerdict, type Moment, Requirement, type StoredFact, type TicketForVerdict } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import type { ChecklistItem } from '../generated/prisma/client.ts';
import { forVerdict } from '../locates/locates.presenter.ts';
import { ticketsOf } from '../locates/tickets.ts';
import { factParts, presentFact } from './facts.presenter.ts';

export interface LiveItem {
  readonly row: ChecklistItem;
  readonly requirement: Requirement;
  /** All that was ever recorded under its key; only facts of the present requirement are folded. */
  readonly facts: StoredFact[];
}

/** A checklist with its facts and locate tickets in memory, for judging one fact after the other. */
export class LiveChecklist {
  readonly items: ReadonlyMap<string, LiveItem>;
  private readonly tickets: readonly TicketForVerdict[];
  private readonly folded = new Map<string, FoldedItem>();

  constructor(items: readonly LiveItem[], tickets: readonly TicketForVerdict[]) {
    this.items = new Map(items.map((item) => [item.row.key, item]));
    this.tickets = tickets;
  }

  add(fact: StoredFact): void {
    this.items.get(fact.fact.itemKey)?.facts.push(fact);
    this.folded.delete(fact.fact.itemKey);
  }

  /** The same list before anything was recorded. */
  withoutFacts(): LiveChecklist {
    return new LiveChecklist([...this.items.values()].map((item) => ({ ...item, facts: [] })), this.tickets);
  }

  facts(): readonly StoredFact[] {
    return [...this.items.values()].flatMap(({ facts }) => facts);
  }

  /** The same fact with another verdict. */
  replace(fact: StoredFact): void {
    const { itemKey, id } = fact.fact;
    const facts = this.items.get(itemKey)?.facts;
    const at = facts?.findIndex((one) => one.fact.id === id) ?? -1;
    if (facts === undefined || at < 0) return;
    facts[at] = fact;
    this.folded.delete(itemKey);
  }

  digging(): DigSpan[] {
    return [...digSpans(this.tickets)];
  }

  fold({ row, requirement, facts }: LiveItem): FoldedItem {
    const known = this.folded.get(row.key);
    if (known !== undefined) return known;
    const made = foldItem(requirement, factsOf({ row, facts }));
    this.folded.set(row.key, made);
    return made;
  }

  states(): ItemInState[] {
    return [...this.items.values()].map((item) => {
      const { state, freshUntil, readyAt } = this.fold(item);
      return { key: item.row.key, template: item.row.template, part: item.row.part, state, freshUntil, readyAt, holdPoint: item.row.holdPoint };
    });
  }

  /** What the hold points look at: the time, and whether the locate tickets say "may dig" then. */
  moment(at: Date): Moment {
    return { at: at.getTime(), mayDig: jobVerdict(this.tickets, at.toISOString()).mayDig };
  }

  /** Work that has begun does not care any more how old the photo of its guard has grown. */
  momentFor(key: string, { at, mayDig, now = at }: Moment): Moment {
    return { at: this.hasBegun(key) ? null : at, mayDig, now };
  }

  /** The step as it is asked at a moment: what is looked at each day is open again on the next, as long as a trench is. */
  foldAt(item: LiveItem, now: number): FoldedItem {
    if (item.requirement.daily === undefined || isCovered(this.states())) return this.fold(item);
    return foldItem(item.requirement, factsOf(item), now);
  }

  heldBy(key: string, moment: Moment): readonly Held[] {
    return heldBy(this.states(), key, this.momentFor(key, moment));
  }

  hasBegun(key: string): boolean {
    const item = this.items.get(key);
    return item?.facts.some(({ fact, verdict }) => fact.kind === 'begun' && verdict === 'kept' && fact.requirementHash === item.row.requirementHash) ?? false;
  }
}

/** Those of the present requirement. */
function factsOf({ row, facts }: Pick<LiveItem, 'row' | 'facts'>): readonly StoredFact[] {
  return facts.filter(({ fact }) => fact.requirementHash === row.requirementHash);
}

export async function loadChecklist(tx: Tx, actor: Actor, jobId: string): Promise<LiveChecklist> {
  const where = { companyId: actor.companyId, jobId };
  const rows = await tx.checklistItem.findMany({ where: { ...where, retiredAt: null }, orderBy: [{ position: 'asc' }, { key: 'asc' }] });
  const facts = (await tx.fieldFact.findMany({ where, include: factParts, orderBy: [{ serverTime: 'asc' }, { seq: 'asc' }, { id: 'asc' }] })).map(presentFact);
  const items = new Map(rows.map((row) => [row.key, { row, requirement: requirementOf(row), facts: new Array<StoredFact>() }]));
  for (const fact of facts) items.get(fact.fact.itemKey)?.facts.push(fact);
  return new LiveChecklist([...items.values()], (await ticketsOf(tx, actor, jobId)).map(forVerdict));
}

export function requirementOf(row: ChecklistItem): Requirement {
  return Requirement.parse(JSON.parse(Buffer.from(row.requirement).toString('utf8')));
}
