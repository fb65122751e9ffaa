import type { DesignDocument, Part } from '@yardfall/calc';
import type { FieldFact } from '../checklists.ts';
import { causality } from './causality.ts';
import { atLeast, foot, noted } from './measures.ts';
import { readingOf } from './asBuilt.ts';
import { lineOf } from './laidLine.ts';
import type { Requirement } from '../checklists.ts';
import { isEmitter } from './traits.ts';
import type { Measure, Subject, TextParams } from './types.ts';

/** Fixed points of the house from which the tapes run, written down by name. */
export const tieFrom = ['tieFromOne', 'tieFromTwo'] as const;

/** Kinds that nobody sees once the lawn is closed. */
const buried: readonly Part['kind'][] = ['pipe', 'underdrain', 'roofLine', 'dischargeLine', 'catchBasin', 'cleanout', 'basin', 'outlet'];
/** A run is tied at its middle: its ends are at parts that have ties of their own, or are seen. */
const runs: readonly Part['kind'][] = ['pipe', 'underdrain', 'roofLine', 'dischargeLine'];

export const isRun = (kind: Part['kind']): boolean => runs.includes(kind);

export function buriedParts({ system }: DesignDocument): readonly Part[] {
  return system.parts.filter(({ kind }) => buried.includes(kind));
}

/** The measure of an earlier step that shoots this part as it lies; null where none does, and the tying step asks for it. */
function shotBefore(part: Part): string | null {
  if (part.kind === 'pipe') return 'invertDown';
  if (part.kind === 'catchBasin') return 'rimLevel';
  return part.kind === 'outlet' && isEmitter(part.outletKind) ? 'lidLevel' : null;
}

/** Where a line without a high point ends. */
function outletOf({ drainsTo }: Part, parts: readonly Part[]): number | null {
  const end = parts.find(({ id }) => id === drainsTo);
  return end?.kind === 'outlet' ? end.level : null;
}

function designedLevel(part: Part, { system }: DesignDocument): number {
  switch (part.kind) {
    case 'basin': return part.rimLevel;
    case 'outlet': return part.level;
    case 'underdrain': return part.invertDown;
    case 'roofLine': return part.unsealedJointLevel;
    case 'dischargeLine': return part.highPoint ?? outletOf(part, system.parts) ?? 0;
    default: return 0;
  }
}

/** A tape of no length ties nothing [m]. */
const shortest = 0.01;
/** What a tape is likely to read [m]: stands where the record needs a figure before there is one. */
const usual = 20 * foot;

/** For each buried part: its level where no earlier step shot it, and the two tapes. */
export function tieMeasures({ document }: Subject): readonly Measure[] {
  return buriedParts(document).flatMap((part) => [
    ...(shotBefore(part) === null ? [noted(`shot:${part.id}`, 'level', designedLevel(part, document))] : []),
    atLeast(`tieOne:${part.id}`, 'length', shortest, usual), atLeast(`tieTwo:${part.id}`, 'length', shortest, usual),
  ]);
}

/** What each part is called and where its tapes lead, and which measure of another step is its shot. */
export function tieFigures({ document }: Subject): TextParams {
  return Object.fromEntries(buriedParts(document).flatMap((part) => [
    [`name:${part.id}`, part.name], [`at:${part.id}`, isRun(part.kind) ? 'middle' : 'centre'], ...(shotBefore(part) === null ? [] : [[`shotAs:${part.id}`, shotBefore(part) ?? '']]),
  ]));
}

export interface Tied {
  readonly part: string;
  readonly name: string;
  readonly at: 'middle' | 'centre';
  /** [m]; null while it lacks. */
  readonly level: number | null;
  readonly one: number | null;
  readonly two: number | null;
}

export interface Ties {
  readonly from: readonly [string | null, string | null];
  readonly parts: readonly Tied[];
}

/** A step with the facts that count. */
export interface StepOnRecord {
  readonly template: string;
  readonly part: string | null;
  readonly requirement: Pick<Requirement, 'measures' | 'params' | 'texts'>;
  readonly facts: readonly FieldFact[];
}

/** What has been tied so far; null for a list that asks for no ties. */
export function tiesOf(steps: readonly StepOnRecord[]): Ties | null {
  const step = steps.find(({ requirement }) => (requirement.texts ?? []).some((name) => name === tieFrom[0]));
  if (step === undefined) return null;
  const { params } = step.requirement;
  const parts = Object.keys(params).flatMap((key) => (key.startsWith('name:') ? [key.slice('name:'.length)] : []));
  const [one, two] = tieFrom.map((name) => lastWritten(step.facts, name));
  return {
    from: [one ?? null, two ?? null],
    parts: parts.map((part) => ({
      part, name: String(params[`name:${part}`]), at: params[`at:${part}`] === 'middle' ? 'middle' as const : 'centre' as const,
      level: levelOf(steps, step, part), one: readingOf(step.facts, `tieOne:${part}`, null), two: readingOf(step.facts, `tieTwo:${part}`, null),
    })),
  };
}

function levelOf(steps: readonly StepOnRecord[], tying: StepOnRecord, part: string): number | null {
  const measure = tying.requirement.params[`shotAs:${part}`];
  if (typeof measure !== 'string') return readingOf(tying.facts, `shot:${part}`, null);
  const own = steps.filter((step) => step.part === part);
  const line = own.map(({ requirement }) => lineOf(requirement)).find((one) => one !== null) ?? null;
  return readingOf(own.flatMap(({ facts }) => facts), measure, line);
}

function lastWritten(facts: readonly FieldFact[], name: string): string | null {
  const written = facts.filter((fact): fact is Extract<FieldFact, { kind: 'written' }> => fact.kind === 'written' && fact.name === name);
  const follows = causality(facts.map((fact) => ({ fact })));
  return written.reduce<(typeof written)[number] | null>((last, one) => (last === null || follows(one, last) || (!follows(last, one) && one.id > last.id) ? one : last), null)?.text ?? null;
}

export function lacks({ level, one, two }: Tied): boolean {
  return level === null || one === null || two === null;
}
