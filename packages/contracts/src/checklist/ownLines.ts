import type { FieldFact, Requirement } from '../checklists.ts';
import { privateQuestions, privateStates, type PrivateAnswer, type PrivateQuestion, type PrivateState } from '../locate/privateLines.ts';
import { heads, type Follows } from './causality.ts';

type Written = Extract<FieldFact, { kind: 'written' }>;

const prefix = 'line:';

/** The homeowner's own lines as a step asks for them: each is answered by the name of its state. */
export const ownLineTexts: readonly string[] = privateQuestions.map((question) => `${prefix}${question}`);

export function ownLineOf(name: string): PrivateQuestion | null {
  return privateQuestions.find((question) => name === `${prefix}${question}`) ?? null;
}

function stateOf(text: string): PrivateState | null {
  return privateStates.find((state) => state === text) ?? null;
}

/** An answer about one of the homeowner's lines; null for anything else that is written down. */
export function ownLineAnswer({ name, text }: Pick<Written, 'name' | 'text'>): PrivateAnswer | null {
  const [question, state] = [ownLineOf(name), stateOf(text)];
  return question === null || state === null ? null : { question, state };
}

export function asksOwnLines({ texts = [] }: Pick<Requirement, 'texts'>): boolean {
  return texts.some((name) => ownLineOf(name) !== null);
}

/** The last answers to each line; two of them where phones did not know of each other. */
export function ownLineHeads(facts: readonly FieldFact[], follows: Follows): readonly Written[] {
  const written = facts.filter((fact): fact is Written => fact.kind === 'written' && ownLineOf(fact.name) !== null);
  return ownLineTexts.flatMap((name) => heads(written.filter((fact) => fact.name === name), follows)) as readonly Written[];
}

/** Two phones say otherwise of one line. */
export function ownLinesDisagree(last: readonly Written[]): boolean {
  return last.some((fact) => last.some((other) => other.name === fact.name && other.text !== fact.text));
}
