import { keepOff, type Portal, type Requirement } from '@yardfall/contracts';
import { placeOf } from '../checklists/place.ts';
import { requirementOf } from '../checklists/live.ts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import type { ChecklistItem, FieldFact } from '../generated/prisma/client.ts';
import { dayOf } from '../jobs/propertyDay.ts';
import { jobOf } from './job.ts';

type Times = Portal['times'];
const settled = ['proven', 'notApplicable', 'waived'];

/** What counts for the customer now and ends by itself: the time to cancel, an open trench, a pump that is at hand, fresh concrete. */
export async function timesOf(tx: Tx, actor: Actor, items: readonly ChecklistItem[]): Promise<Times> {
  const where = { companyId: actor.companyId, jobId: jobOf(actor) };
  const now = actor.request.at;
  const keys = items.filter(({ template }) => ['A6', 'C5', 'I3'].includes(template)).map(({ key }) => key);
  const facts = await tx.fieldFact.findMany({ where: { ...where, itemKey: { in: keys }, verdict: 'kept', kind: { in: ['ticked', 'measured', 'written'] } }, orderBy: { deviceTime: 'asc' } });
  const steps = items.map((row) => ({ row, requirement: requirementOf(row), facts: facts.filter((fact) => fact.itemKey === row.key && fact.requirementHash === row.requirementHash) }));
  const { cancelUntil: until } = await placeOf(tx, actor, where.jobId);
  return [
    ...(until !== null && now < new Date(until) ? [{ code: 'portal.times.cancel', params: { on: dayBefore(until.slice(0, 10)) } }] : []),
    ...(isCovered(items) ? [] : steps.flatMap(ofTrench)),
    ...steps.flatMap((step) => ofConcrete(step, now)),
  ];
}

/** The last day of a time that ends at midnight. */
function dayBefore(day: string): string {
  return dayOf(new Date(Date.parse(`${day}T00:00:00Z`) - 86_400_000));
}

interface Step {
  readonly row: ChecklistItem;
  readonly requirement: Requirement;
  readonly facts: readonly FieldFact[];
}

function isCovered(items: readonly ChecklistItem[]): boolean {
  return items.filter(({ template }) => template === 'E6' || template === 'G7').every(({ state }) => settled.includes(state));
}

function ofTrench({ row, facts }: Step): Times {
  const looked = facts.findLast(({ kind }) => kind === 'ticked');
  if (row.template === 'C5' && looked !== undefined) return [{ code: 'portal.times.trench', params: { name: toldIn(facts, 'competentPerson', 'text'), at: momentOf(looked).toISOString() } }];
  return row.template === 'A6' && toldIn(facts, 'bypassPump', 'value') === '1' ? [{ code: 'portal.times.pump', params: {} }] : [];
}

function ofConcrete({ requirement, facts }: Step, now: Date): Times {
  const placed = facts.findLast(({ kind }) => kind === 'ticked');
  const off = placed === undefined ? null : keepOff(requirement, momentOf(placed).getTime());
  if (off === null || now >= new Date(off.wheels)) return [];
  return [now < new Date(off.foot) ? { code: 'portal.times.concrete', params: off } : { code: 'portal.times.wheels', params: { wheels: off.wheels } }];
}

/** What was last told under a name. */
function toldIn(facts: readonly FieldFact[], name: string, as: 'text' | 'value'): string {
  const told = facts.map(({ payload }) => payload as { readonly name?: string; readonly text?: string; readonly value?: number }).findLast((one) => one.name === name);
  return String(told?.[as] ?? '');
}

function momentOf({ deviceTime, clockBehind }: FieldFact): Date {
  return new Date(deviceTime.getTime() + clockBehind * 1000);
}
