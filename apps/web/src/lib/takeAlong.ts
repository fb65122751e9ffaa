import { checklists, daywork, designs, found, gasRules, jobs, locates, permits, photos, proof, privateLines, surveyFacts, surveys, type Job } from '@yardfall/contracts';
import type { QueryClient } from '@tanstack/react-query';
import { isOutOfReach } from './answers.ts';
// A phone that loses its signal must have what sends later.
import './deliver.ts';
import { planRevision } from './planRevision.ts';
import { read } from './query.ts';

/** How long what a phone took along counts as fresh [ms] (ours). */
const freshFor = 10 * 60_000;

/** One job after the other, so that what the person opens meanwhile does not wait. What cannot be had now is had another time. */
export async function takeAlong(queries: QueryClient, jobIds: readonly string[]): Promise<void> {
  // Read while walking away from a gas line: it is here before anything else.
  await queries.prefetchQuery({ ...read(gasRules.list, {}), staleTime: freshFor, retry: false });
  for (const jobId of jobIds) {
    const job = await queries.fetchQuery({ ...read(jobs.read, { params: { jobId } }), staleTime: freshFor, retry: false }).catch(() => null);
    if (job !== null && !isOutOfReach()) await takeJob(queries, job.data);
  }
}

async function takeJob(queries: QueryClient, { id: jobId, buildRevisionId }: Job): Promise<void> {
  const params = { jobId };
  const quick = { staleTime: freshFor, retry: false } as const;
  await Promise.all([
    queries.prefetchQuery({ ...read(surveys.list, { params }), ...quick }),
    queries.prefetchQuery({ ...read(surveyFacts.list, { params }), ...quick }),
    queries.prefetchQuery({ ...read(photos.list, { params }), ...quick }),
    queries.prefetchQuery({ ...read(found.list, { params }), ...quick }),
    queries.prefetchQuery({ ...read(proof.list, { params }), ...quick }),
    queries.prefetchQuery({ ...read(daywork.list, { params }), ...quick }),
    queries.prefetchQuery({ ...read(locates.list, { params }), ...quick }),
    queries.prefetchQuery({ ...read(privateLines.read, { params }), ...quick }),
    queries.prefetchQuery({ ...read(permits.read, { params }), ...quick }),
  ]);
  if (buildRevisionId === null) {
    // What is surveyed is pinned to the plan of the design in hand.
    const drawn = await queries.fetchQuery({ ...read(designs.list, { params }), ...quick }).catch(() => null);
    const revision = planRevision(drawn?.data.items ?? []);
    if (revision !== null) await queries.prefetchQuery({ ...read(designs.read, { params: { jobId, revisionId: revision.id } }), ...quick });
    return;
  }
  await queries.prefetchQuery({ ...read(designs.list, { params }), ...quick });
  await queries.prefetchQuery({ ...read(checklists.read, { params }), ...quick });
  await queries.prefetchQuery({ ...read(designs.read, { params: { jobId, revisionId: buildRevisionId } }), ...quick });
}
