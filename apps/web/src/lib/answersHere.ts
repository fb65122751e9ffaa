import type { PrivateLines, PrivateQuestion, PrivateState } from '@yardfall/contracts';
import { madeAt } from './madeAt.ts';
import type { JobAnswer, OutboxAnswer, OutboxEntry } from './outbox.ts';

type Line = PrivateLines['lines'][number];
type Kept<W extends JobAnswer['what']> = OutboxAnswer & { readonly answer: Extract<JobAnswer, { readonly what: W }> };

/** What is on this phone of one kind of answer of a job, in the order in which it was recorded. */
export function keptAnswers<W extends JobAnswer['what']>(entries: readonly OutboxEntry[], jobId: string, what: W): readonly Kept<W>[] {
  return entries.filter((entry): entry is Kept<W> => entry.kind === 'answer' && entry.jobId === jobId && entry.answer.what === what);
}

/** The last of them, and those that the office did not take: what is stricter counts all the same until somebody decides. */
export function lastAndRefused<E extends OutboxEntry>(entries: readonly E[]): readonly E[] {
  const last = entries.findLast(({ refused }) => refused === null);
  return [...entries.filter(({ refused }) => refused !== null), ...(last === undefined ? [] : [last])];
}

/** How much care an answer asks for: a line that is there, and one that nobody has looked for. */
function care(question: PrivateQuestion, state: PrivateState): number {
  const order: readonly PrivateState[] = question === 'locator' ? ['yes', 'unknown', 'no'] : ['no', 'unknown', 'yes'];
  return order.indexOf(state);
}

/** The homeowner's lines with what this phone was told since: what asks for more care counts at once, what asks for less once the office has it. */
export function privateLinesHere(lines: readonly Line[], entries: readonly OutboxEntry[], jobId: string): Line[] {
  const kept = keptAnswers(entries, jobId, 'privateLine');
  return lines.map((line) => {
    const own = lastAndRefused(kept.filter(({ answer }) => answer.said.question === line.question));
    return own.reduce((worst, { id, answer: { said } }) => (care(line.question, said.state) > care(line.question, worst.state) ? { ...said, at: madeAt(id), by: '' } : worst), line);
  });
}

/** Whether a job may not be released from this phone yet: an answer is on its way, or one that says no was not taken. */
export function holdsRelease(entry: OutboxEntry, jobId: string): boolean {
  if (entry.kind !== 'answer' || entry.jobId !== jobId || entry.answer.what === 'privateLine') return false;
  const { state } = entry.answer.said;
  return entry.refused === null || (state !== 'granted' && state !== 'notNeeded');
}
