import type { DesignDocument, Evaluation, Finding, Params } from '@yardfall/calc';
import { isMessageCode, type MessageCode, type QuantityKind } from '@yardfall/text';
import { nameOf } from './editWords.ts';
import { partLines } from './partLines.ts';

export interface Compared {
  readonly document: DesignDocument;
  readonly evaluation: Evaluation | null;
}

export const differenceGroups = ['parts', 'levels', 'surfaces', 'plan', 'rest', 'results', 'findings', 'quantities'] as const;
export type DifferenceGroup = (typeof differenceGroups)[number];

export interface Difference {
  readonly group: DifferenceGroup;
  readonly change: 'added' | 'removed' | 'changed';
  /** What differs: a part, a spot level, a finding; its id is unique within the group. */
  readonly id: string;
  readonly name: string;
  /** Field within it, as keys; empty when all of it came or went. */
  readonly path: readonly string[];
  /** What a result or quantity is called and how it is written; null for fields of the document. */
  readonly figure: { readonly label: MessageCode | null; readonly params: Params; readonly quantity: QuantityKind } | null;
  readonly before: unknown;
  readonly after: unknown;
}

interface Named {
  readonly id: string;
  readonly name?: string | undefined;
}

/**
 * Everything in which two revisions differ, by name: parts and their figures, levels, surfaces, the plan, whatever else the document
 * holds, and then what follows from it: results, findings, quantities.
 */
export function compare(before: Compared, after: Compared): Difference[] {
  const [one, other] = [before.document, after.document];
  return [
    ...listed('parts', one.system.parts, other.system.parts),
    ...levels(one, other),
    ...listed('surfaces', one.site.catchments, other.site.catchments),
    ...listed('plan', one.site.plan?.shapes ?? [], other.site.plan?.shapes ?? []),
    ...leaves(restOf(one), restOf(other)).map(({ path, before: was, after: is }): Difference => ({ group: 'rest', change: 'changed', id: path.join('.'), name: '', path, figure: null, before: was, after: is })),
    ...results(before, after), ...findings(before, after), ...quantities(before, after),
  ];
}

// ---------------------------------------------------------------- the document

function listed(group: DifferenceGroup, before: readonly Named[], after: readonly Named[]): Difference[] {
  const nameOf = (item: Named): string => (item.name === undefined || item.name === '' ? item.id : item.name);
  const whole = (item: Named, change: 'added' | 'removed'): Difference => ({
    group, change, id: item.id, name: nameOf(item), path: [], figure: null, before: change === 'removed' ? item : null, after: change === 'added' ? item : null,
  });
  const gone = before.filter(({ id }) => !after.some((item) => item.id === id)).map((item) => whole(item, 'removed'));
  const rest = after.flatMap((item) => {
    const was = before.find(({ id }) => id === item.id);
    if (was === undefined) return [whole(item, 'added')];
    return leaves(was, item).map(({ path, before: old, after: now }): Difference => ({ group, change: 'changed', id: item.id, name: nameOf(item), path, figure: null, before: old, after: now }));
  });
  return [...gone, ...rest];
}

function levels(one: DesignDocument, other: DesignDocument): Difference[] {
  const lists = ['sills', 'spotLevels', 'lowSpots', 'candidateOutlets'] as const;
  const datum = ({ site }: DesignDocument): Named => ({ ...site.datum, id: 'datum', name: site.datum.benchMark });
  return [...listed('levels', [datum(one)], [datum(other)]), ...lists.flatMap((name) => listed('levels', one.site[name], other.site[name]))];
}

/** What no other group names. */
function restOf({ site, system, sources: _sources, ...document }: DesignDocument): unknown {
  const { sills: _a, spotLevels: _b, lowSpots: _c, candidateOutlets: _d, catchments: _e, datum: _f, plan, ...about } = site;
  const { parts: _g, ...more } = system;
  return { ...document, site: { ...about, plan: plan === null ? null : { picture: plan.picture, north: plan.north } }, system: more };
}

interface Leaf {
  readonly path: readonly string[];
  readonly before: unknown;
  readonly after: unknown;
}

/** Fields that differ. A list is one field, unless its elements have ids. */
function leaves(before: unknown, after: unknown, path: readonly string[] = []): Leaf[] {
  if (JSON.stringify(before) === JSON.stringify(after)) return [];
  if (isList(before) && isList(after)) {
    const ids = new Set([...before, ...after].map(({ id }) => id));
    return [...ids].flatMap((id) => leaves(before.find((item) => item.id === id) ?? null, after.find((item) => item.id === id) ?? null, [...path, id]));
  }
  if (!isGroup(before) || !isGroup(after)) return [{ path, before, after }];
  const keys = new Set([...Object.keys(before), ...Object.keys(after)]);
  return [...keys].flatMap((key) => leaves(before[key], after[key], [...path, key]));
}

const isGroup = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value);
const isList = (value: unknown): value is readonly Named[] => Array.isArray(value) && value.length > 0 && value.every((item) => isGroup(item) && typeof item['id'] === 'string');

// ---------------------------------------------------------------- what follows from it

interface Figure {
  readonly id: string;
  readonly name: string;
  readonly label: MessageCode | null;
  readonly params: Params;
  readonly quantity: QuantityKind;
  readonly value: number;
}

function figures({ document, evaluation }: Compared): Figure[] {
  if (evaluation === null) return [];
  const nameOf = (id: string): string => [...document.site.sills, ...document.system.parts].find((item) => item.id === id)?.name ?? id;
  const heights = evaluation.results.freeboards.map(({ sill, returnPeriod, lower }): Figure => ({
    id: `${sill} ${String(returnPeriod)}`, name: nameOf(sill), label: 'designs.compare.freeboard', params: { years: returnPeriod }, quantity: 'height', value: lower,
  }));
  const lines = partLines(evaluation.results, document.rain.designReturnPeriod).map(({ part, label, quantity, value }): Figure => ({ id: `${part} ${label}`, name: nameOf(part), label, params: {}, quantity, value }));
  return [...heights, ...lines];
}

function results(before: Compared, after: Compared): Difference[] {
  return numbers('results', figures(before), figures(after));
}

/** How an amount of the take-off is written. */
const amountOf = { m: 'length', m2: 'area', m3: 'bulk', each: 'count', kg: 'mass', bag80: 'count', cutMetreInch: 'number' } as const;

function quantities(before: Compared, after: Compared): Difference[] {
  const of = ({ document, evaluation }: Compared): Figure[] => (evaluation?.results.quantities ?? []).map(({ code, part, amount, unit }) => ({
    id: `${code} ${part ?? ''}`.trim(), name: document.system.parts.find(({ id }) => id === part)?.name ?? '', label: knownCode(`prices.item.${code}`), params: {}, quantity: amountOf[unit], value: amount,
  }));
  return numbers('quantities', of(before), of(after));
}

const knownCode = (code: string): MessageCode | null => (isMessageCode(code) ? code : null);

function numbers(group: 'results' | 'quantities', before: readonly Figure[], after: readonly Figure[]): Difference[] {
  const ids = new Set([...before, ...after].map(({ id }) => id));
  return [...ids].flatMap((id): Difference[] => {
    const [was, is] = [before.find((figure) => figure.id === id), after.find((figure) => figure.id === id)];
    const known = is ?? was;
    if (known === undefined || was?.value === is?.value) return [];
    const change = was === undefined ? 'added' : is === undefined ? 'removed' : 'changed';
    return [{ group, change, id, name: known.name, path: [], figure: { label: known.label, params: known.params, quantity: known.quantity }, before: was?.value ?? null, after: is?.value ?? null }];
  });
}

/** What a finding says, whatever the thing that it is about is called. */
function saidOf(finding: Finding | undefined, documents: readonly DesignDocument[]): string {
  const at = finding?.at ?? null;
  const names: unknown[] = at === null ? [] : documents.map((document) => nameOf([document], at));
  return JSON.stringify(Object.entries(finding?.params ?? {}).filter(([, value]) => !names.includes(value)));
}

function findings(before: Compared, after: Compared): Difference[] {
  const of = ({ evaluation }: Compared) => new Map((evaluation?.findings ?? []).map((finding) => [`${finding.code} ${finding.at ?? ''}`.trim(), finding]));
  const [was, is] = [of(before), of(after)];
  const documents = [before.document, after.document];
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((id): Difference[] => {
    const [old, now] = [was.get(id), is.get(id)];
    const known = now ?? old;
    if (known === undefined || (old?.severity === now?.severity && saidOf(old, documents) === saidOf(now, documents))) return [];
    const change = old === undefined ? 'added' : now === undefined ? 'removed' : 'changed';
    return [{ group: 'findings', change, id, name: known.at === null ? '' : nameOf([after.document, before.document], known.at), path: [], figure: null, before: old ?? null, after: now ?? null }];
  });
}
