import type { FieldFact, Requirement } from '../checklists.ts';
import { causality, heads, type Follows } from './causality.ts';
import { isInside } from './evidence.ts';
import { lineOf } from './laidLine.ts';
import { ownLineHeads, ownLinesDisagree } from './ownLines.ts';
import { headReadings } from './readings.ts';

const decides = new Set<FieldFact['kind']>(['failed', 'corrected', 'notApplicable', 'waived']);
const claims = new Set<FieldFact['kind']>(['ticked', 'signed']);

/** The answers that stand against each other on a disputed step, none of which knew of the other; empty where nothing is in dispute. */
export function disputeOf(requirement: Requirement, facts: readonly FieldFact[]): readonly FieldFact[] {
  const follows = causality(facts.map((fact) => ({ fact })));
  const decisions = heads(facts.filter(({ kind }) => decides.has(kind)), follows);
  if (new Set(decisions.map(({ kind }) => kind)).size > 1) return decisions;
  const claimed = againstDecision(decisions, facts, follows);
  if (claimed.length > 0) return claimed;
  return figuresApart(requirement, facts, follows) ?? linesApart(facts, follows);
}

/** "Failed" or "does not apply" on one phone, done on another; the last of each phone's claims stands for them. */
function againstDecision(decisions: readonly FieldFact[], facts: readonly FieldFact[], follows: Follows): readonly FieldFact[] {
  const [decision] = decisions.filter(({ kind }) => kind === 'failed' || kind === 'notApplicable');
  if (decision === undefined) return [];
  const apart = facts.filter((fact) => claims.has(fact.kind) && !follows(fact, decision) && !follows(decision, fact));
  const last = new Map(apart.map((fact) => [fact.deviceId, fact]));
  return apart.length === 0 ? [] : [decision, ...last.values()];
}

function figuresApart(requirement: Requirement, facts: readonly FieldFact[], follows: Follows): readonly FieldFact[] | null {
  for (const measure of requirement.measures) {
    const last = headReadings(facts, measure.name, follows, lineOf(requirement));
    const inside = last.filter(({ value }) => isInside(measure, value)).length;
    if (inside > 0 && inside < last.length) return last.map(({ fact }) => fact);
  }
  return null;
}

function linesApart(facts: readonly FieldFact[], follows: Follows): readonly FieldFact[] {
  const last = ownLineHeads(facts, follows);
  const apart = last.filter((fact) => ownLinesDisagree(last.filter(({ name }) => name === fact.name)));
  return apart.filter(({ name }) => name === apart[0]?.name);
}

type Settling = FieldFact extends infer F ? (F extends FieldFact ? Omit<F, 'id' | 'deviceId' | 'seq' | 'deviceTime' | 'factVersion' | 'revisionId' | 'itemKey' | 'requirementHash' | 'seen'> : never) : never;

/** What is recorded when one of the answers is named as the true one: it is said again in the knowledge of all, and what counts as done is shown again and signed by a second person. */
export function settledBy(fact: FieldFact, note: string): readonly Settling[] {
  switch (fact.kind) {
    case 'failed': return [{ kind: 'failed', reason: fact.reason }];
    case 'notApplicable': return [{ kind: 'notApplicable', reason: fact.reason }];
    case 'written': return [{ kind: 'written', name: fact.name, text: fact.text }];
    case 'measured': return [{ kind: 'corrected', note }, { kind: 'measured', name: fact.name, value: fact.value }];
    case 'profile': return [{ kind: 'corrected', note }, { kind: 'profile', shots: fact.shots }];
    default: return [{ kind: 'corrected', note }];
  }
}
