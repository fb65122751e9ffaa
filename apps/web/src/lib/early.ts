import type { JobRow, Me } from '@yardfall/contracts';
import { crewDay } from './crewDay.ts';

export type EarlyQuestion = 'me' | 'list' | 'job' | 'checklist' | 'found';

interface Asked {
  readonly question: EarlyQuestion;
  readonly answer: Promise<Response | null>;
  readonly at: number;
}

/** Asked while the page's own script is still on its way; the first question for the same address takes the answer. */
const asked = new Map<string, Asked>();
let listener: ((one: Asked) => void) | null = null;

/** An early answer that was not taken by then is old [ms] (ours). */
const goodFor = 10_000;

const who = '/api/v1/session';
const openJobs = '/api/v1/jobs?open=true&limit=100';

/** What every page of a member begins with; for the home also its list, and what the crew's next step is read from. */
export function askFirstQuestions(isHome: boolean): void {
  const me = askEarly('me', who);
  if (!isHome) return;
  const list = askEarly('list', openJobs);
  void Promise.all([contentOf<Me>(me), contentOf<{ readonly items?: readonly JobRow[] }>(list)]).then(([{ id = '' } = {}, { items = [] } = {}]) => {
    const [first] = crewDay(items, id);
    if (first === undefined) return;
    for (const [question, part] of [['job', ''], ['checklist', '/checklist'], ['found', '/found']] as const) void askEarly(question, `/api/v1/jobs/${first.id}${part}`);
  });
}

/** A refusal is no answer: who signs in meanwhile asks anew. */
function askEarly(question: EarlyQuestion, url: string): Promise<Response | null> {
  const answer = fetch(url, { headers: { accept: 'application/json, application/problem+json' }, credentials: 'same-origin', cache: 'no-store' })
    .then((response) => (response.ok ? response : null), () => null);
  const one = { question, answer, at: performance.now() };
  asked.set(url, one);
  listener?.(one);
  return answer;
}

/** Read from a copy, before whoever asks for it can have taken it. */
const contentOf = <T>(answer: Promise<Response | null>): Promise<Partial<T> | undefined> =>
  answer.then((response) => response?.clone().json() as Promise<Partial<T>> | undefined).catch(() => undefined);

/** What was asked ahead, and what is asked from now on. */
export function onEarly(heard: (one: Asked) => void): void {
  listener = heard;
  for (const one of asked.values()) heard(one);
}

/** Whether a good answer was asked for ahead and not taken yet; settled when it is here. */
export const cameEarly = async (url: string): Promise<boolean> => ((await asked.get(url)?.answer) ?? null) !== null;

export async function takeEarly(url: string): Promise<Response | null> {
  const early = asked.get(url);
  asked.delete(url);
  return early === undefined || performance.now() - early.at > goodFor ? null : early.answer;
}
