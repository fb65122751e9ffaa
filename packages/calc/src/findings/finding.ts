import type { DesignDocument } from '../document/document.ts';
import type { Finding, Params, Remedy, Results, Severity } from '../results/results.ts';
import type { FindingCode } from './codes.ts';
import { isReached, judge, type Verdict } from './limit.ts';
import type { LimitId } from './limits.ts';
import type { LimitInForce, Limits } from './overrides.ts';

/** What every check sees. */
export interface CheckInput {
  readonly document: DesignDocument;
  readonly results: Results;
  readonly limits: Limits;
  /** false where nobody asks what would cure a fault; with remedies when left out. */
  readonly withRemedies?: boolean;
}

export type CheckId = FindingCode extends `${infer Check}.${string}` ? Check : never;
/** Cases of one check. */
export type CaseOf<Check extends string> = FindingCode extends infer Code ? (Code extends `${Check}.${infer Case}` ? Case : never) : never;

export interface CheckCodes<Check extends CheckId> {
  readonly pass?: CaseOf<Check>;
  readonly warn?: CaseOf<Check>;
  readonly fail?: CaseOf<Check>;
}

/** Where a check stands, what it says in figures, and what would cure it. */
export interface Where {
  readonly at: string | null;
  readonly params?: Params;
  readonly remedy?: (() => Remedy | null) | null;
}

const severities: Readonly<Record<Verdict, Severity>> = { pass: 'note', warn: 'caution', fail: 'stop' };

function finite(params: Params): Params {
  return Object.fromEntries(Object.entries(params).map(([key, value]) => [key, typeof value === 'number' && !(value - value === 0) ? 0 : value]));
}

function numbersOf(limit: LimitInForce): Params {
  return isReached(limit) ? { pass: limit.pass, fail: limit.fail } : { pass: limit.pass };
}

/** The limit in force, with who set it, when and why where it is the company's. */
function limitParams(limit: LimitInForce): Params {
  return { ...numbersOf(limit), ...limit.override };
}

/** A finding under a limit whose verdict is already known. */
export function ruled<Check extends CheckId>(
  { limits, withRemedies = true }: CheckInput, check: Check, limitId: LimitId, name: CaseOf<Check>, severity: Severity, { at, params = {}, remedy = null }: Where,
): Finding {
  const limit = limits[limitId];
  return {
    code: `${check}.${name}`, check, severity, at, params: finite({ ...params, ...numbersOf(limit) }), limit: limitParams(limit), source: limit.source,
    remedy: severity === 'note' || remedy === null || !withRemedies ? null : remedy(),
  };
}

/** A finding from a value and a limit: the code is check id and case; a case that has no code gives no finding. */
export function graded<Check extends CheckId>(
  input: CheckInput, check: Check, limitId: LimitId, value: number, codes: CheckCodes<Check>, where: Where,
): Finding[] {
  const verdict = judge(value, input.limits[limitId]);
  const name = codes[verdict];
  return name === undefined ? [] : [ruled(input, check, limitId, name, severities[verdict], where)];
}

/** A finding from a yes or no, under no limit. */
export function stated<Check extends CheckId>(check: Check, name: CaseOf<Check>, severity: Severity, source: string, { at, params = {}, remedy = null }: Where): Finding {
  return { code: `${check}.${name}`, check, severity, at, params: finite(params), limit: {}, source, remedy: severity === 'note' || remedy === null ? null : remedy() };
}

export const isMet = ({ limits }: CheckInput, limitId: LimitId, value: number): boolean => judge(value, limits[limitId]) === 'pass';
