import { QueryClientProvider } from '@tanstack/react-query';
import { RouterProvider } from '@tanstack/react-router';
import { ErrorBoundary } from '../components/ErrorBoundary.tsx';
import type { Known } from '../lib/firstKept.ts';
import { makeQueryClient } from '../lib/queryClient.ts';
import { ReaderProvider } from '../lib/reader.tsx';
import { firstAnswers } from './firstAnswers.ts';
import { router } from './router.tsx';

const queries = makeQueryClient();

/** The first picture is not held up longer than this [ms] (ours). */
const longestWait = 300;

/**
 * Makes the first picture whole, in place of drawing it anew for each thing that comes: the page of this address, what waits on this device, and what it knew last,
 * which counts as old and is asked for again. A device that knows nothing waits a moment for what was asked ahead.
 */
export async function ready(kept: readonly Known[], outbox: Promise<unknown>): Promise<void> {
  for (const { queryKey, data } of kept) queries.setQueryData(queryKey, data, { updatedAt: 0 });
  const whole = Promise.all([router.load(), outbox, kept.length === 0 ? firstAnswers(queries) : null]);
  await Promise.race([whole, new Promise((resolve) => setTimeout(resolve, longestWait))]);
}

export function App() {
  return (
    <QueryClientProvider client={queries}>
      <ReaderProvider>
        <ErrorBoundary>
          <RouterProvider router={router} />
        </ErrorBoundary>
      </ReaderProvider>
    </QueryClientProvider>
  );
}
