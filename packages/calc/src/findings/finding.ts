import type { DesignDocument } from '../document/document.ts';
import type { Finding, Params, Remedy, Results, Severity } from '../results/results.ts';
import type { FindingCode, RemedyCode } from './codes.ts';
import { judge, limits, type LimitId, type Verdict } from './limits.ts';

/** What every check sees. */
export interface CheckInput {
  readonly document: DesignDocument;
  readonly results: Results;
  readonly limits: typeof limits;
}

type CheckId = FindingCode extends `${infer Check}.${string}` ? Check : never;
/** Cases of one check. */
type CaseOf<Check extends string> = FindingCode extends infer Code ? (Code extends `${Check}.${infer Case}` ? Case : never) : never;

export interface CheckCodes<Check extends CheckId> {
  readonly pass?: CaseOf<Check>;
  readonly warn?: CaseOf<Check>;
  readonly fail?: CaseOf<Check>;
}

const severities: Readonly<Record<Verdict, Severity>> = { pass: 'note', warn: 'caution', fail: 'stop' };

function finite(params: Params): Params {
  return Object.fromEntries(Object.entries(params).map(([key, value]) => [key, typeof value === 'number' && !(value - value === 0) ? 0 : value]));
}

/**
 * A finding from a value and a limit. The code is check id and case; a case that has no code gives no finding.
 */
export function graded<Check extends CheckId>(
  check: Check, limitId: LimitId, value: number, at: string | null, codes: CheckCodes<Check>, params: Params, remedy: Remedy | null = null,
): Finding[] {
  const limit = limits[limitId];
  const verdict = judge(value, limit);
  const name = codes[verdict];
  if (name === undefined) return [];
  const numbers: Params = limit.fail === Infinity ? { pass: limit.pass } : { pass: limit.pass, fail: limit.fail };
  return [{
    code: `${check}.${name}`, check, severity: severities[verdict], at, params: finite({ ...params, ...numbers }), limit: numbers, source: limit.source,
    remedy: verdict === 'pass' ? null : remedy,
  }];
}

/** A finding from a yes or no. */
export function stated<Check extends CheckId>(
  check: Check, name: CaseOf<Check>, severity: Severity, at: string | null, params: Params, source: string, remedy: Remedy | null = null,
): Finding {
  return { code: `${check}.${name}`, check, severity, at, params: finite(params), limit: {}, source, remedy };
}

/** JSON pointer of a field of a part. */
export function partPath(document: DesignDocument, id: string, field: string): string {
  return `/system/parts/${document.system.parts.findIndex((part) => part.id === id)}/${field}`;
}

export function setPart(document: DesignDocument, id: string, field: string, value: number | string | boolean, code: RemedyCode, params: Params = {}): Remedy {
  return { code, params, patch: [{ path: partPath(document, id, field), value }] };
}
