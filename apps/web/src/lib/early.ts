/** Asked while the page's own script is still on its way; the first question for the same address takes the answer. */
const asked = new Map<string, { readonly answer: Promise<Response | null>; readonly at: number }>();

/** An early answer that was not taken by then is old [ms] (ours). */
const goodFor = 10_000;

/** What every page of a member begins with, and the list that the home shows. */
const firstQuestions = ['/api/v1/session', '/api/v1/jobs?open=true&limit=100'] as const;

export function askFirstQuestions(isHome: boolean): void {
  for (const url of isHome ? firstQuestions : firstQuestions.slice(0, 1)) askEarly(url);
}

/** A refusal is no answer: who signs in meanwhile asks anew. */
export function askEarly(url: string): void {
  const answer = fetch(url, { headers: { accept: 'application/json, application/problem+json' }, credentials: 'same-origin', cache: 'no-store' });
  asked.set(url, { answer: answer.then((response) => (response.ok ? response : null), () => null), at: performance.now() });
}

export async function takeEarly(url: string): Promise<Response | null> {
  const early = asked.get(url);
  asked.delete(url);
  return early === undefined || performance.now() - early.at > goodFor ? null : early.answer;
}
