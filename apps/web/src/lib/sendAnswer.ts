import { evidenceLacking, permits, privateLines, type ErrorCode, type Permits, type PrivateLines } from '@yardfall/contracts';
import { rememberPermits, rememberPrivateLines } from './answers.ts';
import { call } from './api.ts';
import { madeAt } from './madeAt.ts';
import { outboxNow, type OutboxAnswer } from './outbox.ts';
import { ApiProblem } from './problem.ts';

export interface AnswersHeard {
  /** Told before the answer leaves the outbox, so that no page shows less in between. */
  readonly onPermits?: (jobId: string, permits: Permits) => void;
  readonly onPrivateLines?: (jobId: string, lines: PrivateLines) => void;
}

/** One answer with when it was given, by this phone's clock, and what that clock says now. */
export async function sendAnswer({ id, jobId, answer }: OutboxAnswer, heard: AnswersHeard): Promise<void> {
  const params = { jobId };
  const kept = { id, at: madeAt(id), sentAt: new Date().toISOString() };
  const refused = refusalOf(answer.said.photoId);
  const photoId = refused === null ? answer.said.photoId : null;
  if (answer.what === 'privateLine') {
    const { data } = await call(privateLines.declare, { params, body: { lines: [{ ...answer.said, photoId, kept }] } });
    await rememberPrivateLines(jobId, data);
    heard.onPrivateLines?.(jobId, data);
    return;
  }
  // A paper that the office could not take shows nothing.
  if (refused !== null && evidenceLacking({ ...answer.said, photoId }).length > 0) throw new ApiProblem(refused);
  const { data } = answer.what === 'permit'
    ? await call(permits.answer, { params, body: { answers: [{ ...answer.said, photoId, kept }] } })
    : await call(permits.answerOutlet, { params, body: { ...answer.said, photoId, kept } });
  await rememberPermits(jobId, data);
  heard.onPermits?.(jobId, data);
}

function refusalOf(photoId: string | null): ErrorCode | null {
  const photo = outboxNow().find((entry) => entry.kind === 'photo' && entry.id === photoId);
  return (photo?.refused ?? null) as ErrorCode | null;
}
