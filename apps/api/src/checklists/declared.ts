import { ownLineAnswer, type StoredFact } from '@yardfall/contracts';
import type { Actor } from '../common/actor.ts';
import type { Tx } from '../common/database.ts';
import { byOurClock } from '../common/phoneClock.ts';
import { addAnswers, answerKey, latestAnswers } from '../jobs/answers.ts';

/** What the homeowner declared on the crew's phone stands in the office as their answers too, unless the office heard something later. Whether there was news. */
export async function declareLines(tx: Tx, actor: Actor, jobId: string, stored: readonly StoredFact[]): Promise<boolean> {
  const told = stored.flatMap(({ fact, verdict, clockBehind }) => {
    const answer = fact.kind === 'written' && verdict === 'kept' ? ownLineAnswer(fact) : null;
    return answer === null ? [] : [{ ...answer, at: byOurClock(fact.deviceTime, clockBehind, actor.request.at), deviceTime: fact.deviceTime, clockBehind }];
  });
  if (told.length === 0) return false;
  const before = await latestAnswers(tx, actor, jobId, 'privateLine');
  const last = [...new Map(told.map((one) => [one.question, one])).values()];
  const news = last.flatMap(({ question, state, ...when }) => {
    const known = before.get(answerKey(question, ''));
    if (known !== undefined && (known.state === state || known.at > when.at)) return [];
    return [{ kind: question, state, number: '', note: '', on: null, expiresOn: null, photoId: null, when }];
  });
  await addAnswers(tx, actor, jobId, 'privateLine', '', news);
  return news.length > 0;
}
