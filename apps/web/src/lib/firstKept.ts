import type { JobRow, Me } from '@yardfall/contracts';
import { answerKey, ownerKey } from './answerKeys.ts';
import type { Answer } from './api.ts';
import { crewDay } from './crewDay.ts';
import { inStores, type Store } from './idb.ts';
import { openJobs } from './openJobs.ts';

/** One thing that this device knew when it was last used, under the name that the page asks for it by. */
export interface Known {
  readonly queryKey: readonly unknown[];
  readonly data: unknown;
}

/** The page is not held up longer than this by a store that does not answer [ms] (ours). */
const longestRead = 3_000;

let reading: Promise<readonly Known[]> | null = null;

/** Reads what a member's page begins with while its script is on its way: it is shown at once, and asked for again behind it. */
export function readKept(isHome: boolean): void {
  const late = new Promise<readonly Known[]>((resolve) => setTimeout(() => resolve([]), longestRead));
  reading = Promise.race([inStores(['answers'], 'readonly', ({ answers }) => knownOf(answers, isHome)).catch(() => []), late]);
}

export const firstKept = (): Promise<readonly Known[]> => reading ?? Promise.resolve([]);

async function knownOf(answers: Store, isHome: boolean): Promise<readonly Known[]> {
  const known = async (id: string, params: unknown = null, query: unknown = null) => ({ queryKey: [id, params, query], data: await answers.get(answerKey(id, { params, query })) });
  const [owner, me, list] = await Promise.all([answers.get(ownerKey), known('identity.me'), isHome ? known('jobs.list', null, openJobs) : null]);
  const { data: member } = (me.data ?? {}) as Partial<Answer<Me>>;
  if (member === undefined || member.id !== owner) return [];
  const { data: rows } = (list?.data ?? {}) as Partial<Answer<{ readonly items: readonly JobRow[] }>>;
  if (rows === undefined) return [me];
  const [first] = crewDay(rows.items, member.id);
  const params = { jobId: first?.id };
  const ofFirst = first === undefined ? [] : await Promise.all([known('jobs.read', params), known('checklists.read', params), known('found.list', params)]);
  // The list of the home is asked for page by page.
  return [me, { queryKey: ['jobs.list', null, openJobs, 'pages'], data: { pages: [rows], pageParams: [null] } }, ...ofFirst.filter(({ data }) => data !== undefined)];
}
