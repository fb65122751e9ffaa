import canonicalize from 'canonicalize';
import { causality, heads } from '../checklist/causality.ts';
import type { StoredSurveyFact, SurveyBase, SurveyFact } from '../surveyFacts.ts';
import type { SurveyContent } from '../surveys.ts';
import { baseEntries, contentOf } from './content.ts';
import { entryKind, surveyEntryKinds, type SurveyEntryKind } from './keys.ts';

/** A fact with its verdict: only kept ones count, but the others still tell what was known when. */
export type JudgedSurveyFact = Pick<StoredSurveyFact, 'fact' | 'verdict'>;

type ValueFact = Exclude<SurveyFact, { kind: 'struck' }>;
/** What an entry of each kind holds. */
export type SurveyValues = { [K in SurveyEntryKind]: Extract<ValueFact, { kind: K }>['value'] };

/** One of the things that phones said of an entry; `value` is null where it was struck. */
export interface SurveyChoice {
  readonly facts: readonly string[];
  readonly value: SurveyValues[SurveyEntryKind] | null;
}

interface EntryState {
  readonly key: string;
  /** Stays on record and counts for nothing; `value` is what it held. */
  readonly struck: boolean;
  /** Phones said different things of it without knowing of each other. `value` is the one recorded first, until a person chooses. */
  readonly disputed: boolean;
  /** One when all agree; several when it is disputed; none for what was there before the first fact. */
  readonly choices: readonly SurveyChoice[];
  /** What a new fact of this entry names in `seen`: whoever looks at this state knows of these. */
  readonly seen: readonly string[];
}

export type SurveyEntry<K extends SurveyEntryKind> = EntryState & { readonly kind: K; readonly value: SurveyValues[K] };
export type FoldedEntry = { [K in SurveyEntryKind]: SurveyEntry<K> }[SurveyEntryKind];

export interface FoldedSurvey {
  readonly name: string;
  readonly content: SurveyContent;
  /** Every entry that ever was, struck ones too: readings in the order of the book, the rest as they came up. */
  readonly entries: readonly FoldedEntry[];
  /** Keys of the disputed entries. */
  readonly disputed: readonly string[];
}

/** How many ids a fact may name. */
const mostSeen = 200;

/**
 * A survey as the facts of its phones make it: of each entry, what the kept facts say that no other of the entry follows.
 * The order in which facts arrive plays no part, a fact that comes twice counts once, and facts that disagree leave the
 * entry disputed until a person records a fact that names them all.
 * @param facts of one survey, whatever their verdict
 * @param base  what the survey was before its first fact; null for one that was born in the field
 */
export function foldSurvey(facts: readonly JudgedSurveyFact[], base: SurveyBase | null): FoldedSurvey {
  const earlier = base === null ? [] : baseEntries(base);
  const before = new Map(earlier.map((entry, index) => [entry.key, { ...entry, index }]));
  const byEntry = grouped(facts, ({ fact }) => fact.entry);
  const keys = [...new Set([...before.keys(), ...byEntry.keys()])];
  const entries = keys
    .flatMap((key) => {
      const of = byEntry.get(key) ?? [];
      const entry = foldEntry(key, of, before.get(key)?.value ?? null);
      return entry === null ? [] : [{ entry, order: before.get(key)?.index ?? Infinity, first: firstId(of) }];
    })
    .sort((a, b) => byKind(a.entry, b.entry) || byPlace(a.entry, b.entry) || byOrder(a, b) || compare(a.entry.key, b.entry.key))
    .map(({ entry }) => entry);
  const name = entries.find((entry) => entry.kind === 'begun')?.value.name ?? '';
  return { name, content: contentOf(entries.filter(({ struck }) => !struck)), entries, disputed: entries.filter(({ disputed }) => disputed).map(({ key }) => key) };
}

type AnyValue = SurveyValues[SurveyEntryKind];

function foldEntry(key: string, facts: readonly JudgedSurveyFact[], base: AnyValue | null): FoldedEntry | null {
  const kind = entryKind(key);
  if (kind === null) return null;
  const follows = causality(facts);
  const kept = distinct(facts.flatMap(({ fact, verdict }) => (verdict === 'kept' ? [fact] : [])));
  const last = heads(kept, follows);
  const choices = choicesOf(last);
  const standing = choices.find(({ value }) => value !== null)?.value ?? null;
  const value = standing ?? choicesOf(heads(kept.filter(isValue), follows))[0]?.value ?? base;
  if (value === null) return null;
  const older = kept.filter((fact) => !last.includes(fact));
  const seen = [...older, ...last].map(({ id }) => id).slice(-mostSeen);
  return { key, kind, value, struck: choices.length > 0 && standing === null, disputed: choices.length > 1, choices, seen } as FoldedEntry;
}

/** What the last facts say, equal ones together, the earliest first. */
function choicesOf(facts: readonly SurveyFact[]): readonly SurveyChoice[] {
  const said = grouped(facts, (fact) => canonicalize(valueOf(fact)) ?? '');
  return [...said.values()].map((same) => ({ facts: same.map(({ id }) => id), value: valueOf(same[0] as SurveyFact) }));
}

function valueOf(fact: SurveyFact): AnyValue | null {
  return fact.kind === 'struck' ? null : fact.value;
}

function isValue(fact: SurveyFact): fact is ValueFact {
  return fact.kind !== 'struck';
}

/** Once each, by id: ids of version 7 are in the order of recording. */
function distinct(facts: readonly SurveyFact[]): readonly SurveyFact[] {
  return [...new Map(facts.map((fact) => [fact.id, fact])).values()].sort((a, b) => compare(a.id, b.id));
}

function firstId(facts: readonly JudgedSurveyFact[]): string {
  return facts.reduce((first, { fact, verdict }) => (verdict === 'kept' && (first === '' || fact.id < first) ? fact.id : first), '');
}

function grouped<T>(all: readonly T[], keyOf: (one: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const one of all) {
    const group = groups.get(keyOf(one));
    if (group === undefined) groups.set(keyOf(one), [one]);
    else group.push(one);
  }
  return groups;
}

function byKind(a: FoldedEntry, b: FoldedEntry): number {
  return surveyEntryKinds.indexOf(a.kind) - surveyEntryKinds.indexOf(b.kind);
}

/** Readings come in the order of the book. */
function byPlace(a: FoldedEntry, b: FoldedEntry): number {
  return a.kind === 'reading' && b.kind === 'reading' ? a.value.place - b.value.place : 0;
}

function byOrder(a: { readonly order: number; readonly first: string }, b: { readonly order: number; readonly first: string }): number {
  return a.order === b.order ? compare(a.first, b.first) : a.order - b.order;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
