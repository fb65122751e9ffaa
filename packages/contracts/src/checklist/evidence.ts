import type { FieldFact, Requirement } from '../checklists.ts';
import type { Follows } from './causality.ts';
import { lineOf, type LaidLine } from './laidLine.ts';
import { asksOwnLines, ownLineHeads, ownLinesDisagree } from './ownLines.ts';
import { headReadings } from './readings.ts';

type Measure = Requirement['measures'][number];

export type FactOf<K extends FieldFact['kind']> = Extract<FieldFact, { kind: K }>;

export function ofKind<K extends FieldFact['kind']>(facts: readonly FieldFact[], kind: K): readonly FactOf<K>[] {
  return facts.filter((fact): fact is FactOf<K> => fact.kind === kind);
}

export interface Shown {
  /** What is still to be shown: `tick`, `photo:2`, `value:name`, `outside:name`, `text:name`, `document`, `signature:signer`. */
  readonly missing: readonly string[];
  /** A measure is outside its limits. */
  readonly outside: boolean;
  /** Two phones measured the same thing, one inside its limits and one outside, and neither knew of the other. */
  readonly disagrees: boolean;
}

/** What these facts show of a requirement. */
export function shown(requirement: Requirement, facts: readonly FieldFact[], follows: Follows): Shown {
  const wants = new Set(requirement.evidence);
  const line = lineOf(requirement);
  const asked = wants.has('value') ? requirement.measures.filter((measure) => measure.optional !== true && isAsked(measure, facts, follows)) : [];
  const measured = asked.map((measure) => (isSpared(measure, requirement, facts, follows) ? { lack: null, outside: false, disagrees: false } : judge(measure, facts, follows, line)));
  const lines = asksOwnLines(requirement) ? ownLineHeads(facts, follows) : [];
  const missing = [
    ...(wants.has('tick') && ofKind(facts, 'ticked').length === 0 ? ['tick'] : []),
    ...missingPhotos(wants.has('photo') ? requirement.minPhotos : 0, facts),
    ...measured.flatMap(({ lack }) => (lack === null ? [] : [lack])),
    ...(wants.has('text') ? (requirement.texts ?? []).filter((name) => ofKind(facts, 'written').every((fact) => fact.name !== name)).map((name) => `text:${name}`) : []),
    ...(wants.has('document') && ofKind(facts, 'document').length === 0 ? ['document'] : []),
    ...(wants.has('signature') ? missingSignatures(requirement, facts.filter((fact) => sawTheList(fact, lines, follows))) : []),
  ];
  return { missing, outside: measured.some(({ outside }) => outside), disagrees: measured.some(({ disagrees }) => disagrees) || ownLinesDisagree(lines) };
}

/** Who signs a list signs it as it stands: a signature from before an answer does not cover it. */
function sawTheList(fact: FieldFact, lines: readonly FieldFact[], follows: Follows): boolean {
  return lines.every((line) => follows(fact, line));
}

function missingPhotos(wanted: number, facts: readonly FieldFact[]): readonly string[] {
  const lack = wanted - new Set(ofKind(facts, 'photo').map(({ photoId }) => photoId)).size;
  return lack > 0 ? [`photo:${String(lack)}`] : [];
}

function missingSignatures({ signers }: Requirement, facts: readonly FieldFact[]): readonly string[] {
  const signed = new Set(ofKind(facts, 'signed').map(({ signer }) => signer));
  return signers.filter((signer) => signer !== 'crewLead' && signer !== 'owner' && !signed.has(signer)).map((signer) => `signature:${signer}`);
}

/** Another measure that is there and good stands in its place, and nothing was measured of it. */
function isSpared({ name, unless }: Measure, { measures }: Requirement, facts: readonly FieldFact[], follows: Follows): boolean {
  const other = measures.find((one) => one.name === unless);
  if (other === undefined || headReadings(facts, name, follows).length > 0) return false;
  const readings = headReadings(facts, other.name, follows);
  return readings.length > 0 && readings.every(({ value }) => isInside(other, value));
}

/** A measure that stands and falls with another: asked for only where that came out high. */
export function isAsked({ when }: Measure, facts: readonly FieldFact[], follows: Follows): boolean {
  return when === undefined || headReadings(facts, when.name, follows).some(({ value }) => value >= when.least - hair);
}

interface Judged {
  readonly lack: string | null;
  readonly outside: boolean;
  readonly disagrees: boolean;
}

/** Limits are compared with a hair of room [m, -], so that a value typed at the limit is inside. */
const hair = 1e-9;

export function isInside({ min, max }: Measure, value: number): boolean {
  return (min === null || value >= min - hair) && (max === null || value <= max + hair);
}

function judge(measure: Measure, facts: readonly FieldFact[], follows: Follows, line: LaidLine | null): Judged {
  const last = headReadings(facts, measure.name, follows, line);
  if (last.length === 0) return { lack: `value:${measure.name}`, outside: false, disagrees: false };
  const inside = last.filter(({ value }) => isInside(measure, value)).length;
  if (inside === last.length) return { lack: null, outside: false, disagrees: false };
  return { lack: `outside:${measure.name}`, outside: inside === 0, disagrees: inside > 0 };
}
