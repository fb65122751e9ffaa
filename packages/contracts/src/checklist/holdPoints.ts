import type { ItemState } from '../checklists.ts';
import { handoverStep, holdPointRules, type HoldPointRule } from './guards.ts';

/** What the hold points need to know of an item. */
export interface ItemInState {
  readonly key: string;
  readonly template: string;
  readonly part: string | null;
  readonly state: ItemState;
  readonly freshUntil: number | null;
  /** The hold point that its record names. */
  readonly holdPoint?: string | null;
  /** From when on [ms] what was glued bears pressure; null or absent where nothing is. */
  readonly readyAt?: number | null;
}

export interface HoldPointNow {
  readonly id: string;
  /** Set when each part has its own. */
  readonly part: string | null;
  readonly open: boolean;
  readonly waived: boolean;
  /** Items whose evidence opens it, and items that it guards. */
  readonly items: readonly string[];
  readonly guards: readonly string[];
  /** The items that still keep it closed. */
  readonly closedBy: readonly string[];
}

export interface Held {
  readonly holdPoint: string;
  readonly items: readonly string[];
}

export interface Moment {
  /** When the guarded work begins [ms]; null leaves the age of photos out, as for work that has begun. */
  readonly at: number | null;
  /** HP-1 opens only while the locate tickets say "may dig" as well. */
  readonly mayDig: boolean;
  /** The moment itself [ms], which the look of the day and the cure of a joint are asked for also when the work has begun; `at` when absent. */
  readonly now?: number | null;
}

export function holdPointsNow(items: readonly ItemInState[], moment: Moment): readonly HoldPointNow[] {
  return holdPointRules.flatMap((rule) => scopes(rule, items).map((part) => state(rule, part, items, moment))).filter((point) => point.items.length > 0);
}

/** Hold points that still guard an item, with what would open each. */
export function heldBy(items: readonly ItemInState[], key: string, moment: Moment): readonly Held[] {
  return heldAmong(holdPointsNow(items, moment), key);
}

/** The same of hold points that are known, for who asks about many items. */
export function heldAmong(points: readonly HoldPointNow[], key: string): readonly Held[] {
  return points.filter((point) => !point.open && point.guards.includes(key)).map(({ id, closedBy }) => ({ holdPoint: id, items: closedBy }));
}

export interface BeforeHandover {
  /** Hold points that are closed, with what would open each. */
  readonly held: readonly Held[];
  /** Other steps that are neither proven nor said, with a reason, not to apply. */
  readonly unsettled: readonly string[];
}

/** What stands between the work and the handover: work that was left undone opens nothing. */
export function beforeHandover(items: readonly ItemInState[]): BeforeHandover {
  const points = holdPointsNow(items, { at: null, mayDig: true });
  const told = new Set(points.flatMap((point) => point.items));
  return {
    held: points.filter(({ open }) => !open).map(({ id, closedBy }) => ({ holdPoint: id, items: closedBy })),
    unsettled: items.filter(({ key, state: is }) => !told.has(key) && !settled.includes(is)).map(({ key }) => key),
  };
}

const settled: readonly ItemState[] = ['proven', 'notApplicable', 'waived'];

/** Only evidence or an owner's waiver opens a hold point; "not applicable" never does. */
export function opens({ state: is, freshUntil }: ItemInState, at: number | null): boolean {
  if (is === 'waived') return true;
  return is === 'proven' && (freshUntil === null || at === null || at <= freshUntil);
}

/** Whether a look of the day is asked for no more: all the steps are done that end it. */
export function isCovered(all: readonly ItemInState[], { until = [] }: Pick<HoldPointRule, 'until'> = trenchRule): boolean {
  const last = all.filter(({ template }) => until.includes(template));
  return last.length > 0 && last.every(({ state: is }) => settled.includes(is));
}

const trenchRule = holdPointRules.find(({ id }) => id === 'HP-trench') ?? {};

/** Whether somebody looked today and since it rained. */
function looked({ again }: HoldPointRule, { state: is, freshUntil }: ItemInState, now: number | null): boolean {
  if (now === null) return is === 'proven' || is === 'waived';
  if (again === true && freshUntil === null && is !== 'failed' && is !== 'disputed') return true;
  return is === 'proven' && (freshUntil === null || now < freshUntil);
}

function isOpened(rule: HoldPointRule, item: ItemInState, { at, now = at }: Moment): boolean {
  if (rule.until !== undefined) return looked(rule, item, now);
  const { readyAt = null } = item;
  return opens(item, at) && (item.state === 'waived' || readyAt === null || now === null || now >= readyAt);
}

function provers(rule: HoldPointRule, items: readonly ItemInState[]): readonly ItemInState[] {
  return items.filter(({ template, holdPoint = null }) => rule.items.includes(template) && (rule.named === undefined || holdPoint === rule.named));
}

function state(rule: HoldPointRule, part: string | null, all: readonly ItemInState[], moment: Moment): HoldPointNow {
  const here = part === null ? all : all.filter((item) => item.part === part);
  const items = provers(rule, here);
  const notDig = rule.id === 'HP-1' && !moment.mayDig;
  // The record of the job has to show that somebody looked; the work has no use for it any more.
  const over = rule.until !== undefined && (moment.now ?? moment.at) !== null && isCovered(all, rule);
  const closed = over ? [] : items.filter((item) => notDig || !isOpened(rule, item, moment));
  const guards = here.filter(({ template }) => rule.guards.includes(template)).map(({ key }) => key);
  return {
    id: rule.id, part, open: closed.length === 0, waived: items.some((item) => item.state === 'waived'), items: items.map(({ key }) => key),
    guards: rule.guards.includes(handoverStep) ? [...guards, handoverStep] : guards, closedBy: closed.map(({ key }) => key),
  };
}

function scopes(rule: HoldPointRule, items: readonly ItemInState[]): readonly (string | null)[] {
  if (!rule.byPart) return [null];
  return [...new Set(items.filter(({ template }) => rule.items.includes(template)).map(({ part }) => part))];
}
